namespace RackCheck.Api.Tests.Architecture.Circles.ByAttribute
{
    [AttributeUsage(AttributeTargets.All)]
    internal sealed class MarkedAttribute(Type type) : Attribute
    {
        public Type Type => type;
    }
}

namespace RackCheck.Api.Tests.Architecture.Circles.ByAttribute.One
{
    [Marked(typeof(Other.Right))]
    internal sealed class Left
    {
    }
}

namespace RackCheck.Api.Tests.Architecture.Circles.ByAttribute.Other
{
    internal sealed class Right
    {
        [Marked(typeof(One.Left))]
        public static string Text => "";
    }
}
