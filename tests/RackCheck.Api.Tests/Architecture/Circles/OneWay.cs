namespace RackCheck.Api.Tests.Architecture.Circles.OneWay.Above
{
    internal sealed record Upper(Below.Lower? Next);
}

namespace RackCheck.Api.Tests.Architecture.Circles.OneWay.Below
{
    internal sealed record Lower(int Number);
}
