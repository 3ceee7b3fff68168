using System.Runtime.ExceptionServices;
using RackCheck.Api.Hosting;

namespace RackCheck.Api.Tests.Http;

/// <summary>The process ends only when memory runs out. <c>tests/soak/memory.py</c> tests it with a real process.</summary>
public sealed class MemoryGuardTests
{
    // InsufficientMemoryException derives from OutOfMemoryException and may be created by code.
    [Fact]
    public void Failed_allocation_ends_the_process() => Assert.Equal(1, EndsFor(new InsufficientMemoryException()));

    [Fact]
    public void Other_exceptions_do_not_end_the_process()
    {
        Assert.Equal(0, EndsFor(new InvalidOperationException()));
        Assert.Equal(0, EndsFor(new InsufficientExecutionStackException()));
    }

    private static int EndsFor(Exception fault)
    {
        var ends = 0;
        MemoryGuard.EndWhenExhausted(new FirstChanceExceptionEventArgs(fault), _ => ends++);
        return ends;
    }
}
