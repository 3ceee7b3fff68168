namespace RackCheck.Api.Tests.Architecture.Circles.ByConstraint.One
{
    internal sealed class Left
    {
        public static void Of<T>() where T : Other.Right => _ = typeof(T);
    }
}

namespace RackCheck.Api.Tests.Architecture.Circles.ByConstraint.Other
{
    internal abstract class Right
    {
        public One.Left[] Lefts = [];
    }
}
