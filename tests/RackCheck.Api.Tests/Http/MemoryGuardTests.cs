using System.Runtime.ExceptionServices;
using RackCheck.Api.Hosting;

namespace RackCheck.Api.Tests.Http;

/// <summary>The process ends when memory runs out, and for nothing else. That it ends for real is shown by <c>tests/soak/memory.py</c>.</summary>
public sealed class MemoryGuardTests
{
    // The second is a kind of the first, and may be made by hand.
    [Fact]
    public void Failed_allocation_ends_the_process() => Assert.Equal(1, EndsFor(new InsufficientMemoryException()));

    [Fact]
    public void Other_exceptions_do_not()
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
