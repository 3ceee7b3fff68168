namespace RackCheck.Api.Tests.Architecture.Circles.ByBody.One
{
    internal sealed class Left
    {
        public static string Text => new Other.Right().ToString()!;
    }
}

namespace RackCheck.Api.Tests.Architecture.Circles.ByBody.Other
{
    internal sealed class Right
    {
        public static string Text => One.Left.Text;
    }
}
