using BenchmarkDotNet.Running;
using RackCheck.Benchmarks;

if (args is ["rules"])
{
    RuleCosts.Print();
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

BenchmarkSwitcher.FromAssembly(typeof(CheckBenchmarks).Assembly).Run(args);
