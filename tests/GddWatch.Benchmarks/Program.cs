using BenchmarkDotNet.Running;
using GddWatch.Benchmarks.ByYear;
using GddWatch.Benchmarks.Fetch;

if (args is ["ghcn-by-year", .. string[] rest]) return await ByYearCommand.RunAsync(rest);
if (args is ["fetch", .. string[] words]) return await FetchCommand.RunAsync(words, CancellationToken.None);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
