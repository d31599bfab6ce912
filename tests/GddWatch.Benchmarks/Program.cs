using BenchmarkDotNet.Running;
using GddWatch.Benchmarks.ByYear;

if (args is ["ghcn-by-year", .. string[] rest]) return await ByYearCommand.RunAsync(rest);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
