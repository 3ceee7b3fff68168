namespace RackCheck.Api.Tests.Architecture.Circles.BySignature.One
{
    internal sealed class Left
    {
        public Other.Right? Get() => null;
    }
}

namespace RackCheck.Api.Tests.Architecture.Circles.BySignature.Other
{
    internal sealed class Right
    {
        public void Set(One.Left left) => _ = left;
    }
}
