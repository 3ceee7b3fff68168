using BenchmarkDotNet.Running;
using RackCheck.Benchmarks;

if (args is ["rules"])
{
    RuleCosts.Print();
    return;
}

if (args is ["worst", "documents"])
{
    WorstDocuments.Print();
    return;
}

if (args is ["worst"])
{
    WorstRequests.Print();
    return;
}

if (args is ["ranges"])
{
    RangeCost.Print();
    return;
}

if (args is ["drawings"])
{
    DrawingTimes.Print();
    return;
}

if (args is ["baskets"])
{
    BasketTimes.Print();
    return;
}

if (args is ["proposals", "dearest"])
{
    ProposalTimes.PrintDearest();
    return;
}

if (args is ["proposals", .. var solves])
{
    ProposalTimes.Print(solves is [var number] ? int.Parse(number, System.Globalization.CultureInfo.InvariantCulture) : 0);
    return;
}

BenchmarkSwitcher.FromAssembly(typeof(CheckBenchmarks).Assembly).Run(args);
