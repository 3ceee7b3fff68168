using BenchmarkDotNet.Running;
using RackCheck.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(CheckBenchmarks).Assembly).Run(args);
