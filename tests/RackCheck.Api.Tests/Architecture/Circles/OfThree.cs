namespace RackCheck.Api.Tests.Architecture.Circles.OfThree.A
{
    internal sealed record First(B.Second? Next);
}

namespace RackCheck.Api.Tests.Architecture.Circles.OfThree.B
{
    internal sealed record Second(C.Third? Next);
}

namespace RackCheck.Api.Tests.Architecture.Circles.OfThree.C
{
    internal sealed record Third(A.First? Next);
}
