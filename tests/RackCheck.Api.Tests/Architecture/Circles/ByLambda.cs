namespace RackCheck.Api.Tests.Architecture.Circles.ByLambda.One
{
    internal sealed class Left
    {
        public static Func<int, object> Make(int more) => i => i + more > 0 ? new Other.Right() : "";
    }
}

namespace RackCheck.Api.Tests.Architecture.Circles.ByLambda.Other
{
    internal sealed class Right
    {
        public static IEnumerable<object> All() { yield return new One.Left(); }
    }
}
