namespace RackCheck.Api.Tests.Architecture.Circles.ByParent
{
    internal sealed class Left : Child.Right;
}

namespace RackCheck.Api.Tests.Architecture.Circles.ByParent.Child
{
    internal class Right
    {
        public Left? Own { get; init; }
    }
}
