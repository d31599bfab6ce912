using BenchmarkDotNet.Running;
using GddWatch.Benchmarks.ByYear;
using GddWatch.Benchmarks.Chances;
using GddWatch.Benchmarks.Fetch;
using GddWatch.Benchmarks.Mail;
using GddWatch.Benchmarks.Pass;
using GddWatch.Benchmarks.Seasons;

if (args is ["ghcn-by-year", .. string[] rest]) return await ByYearCommand.RunAsync(rest);
if (args is ["fetch", .. string[] words]) return await FetchCommand.RunAsync(words, CancellationToken.None);
if (args is ["mail", .. string[] templates]) return await MailCommand.RunAsync(templates, CancellationToken.None);
if (args is ["seasons", .. string[] settings]) return await SeasonsCommand.RunAsync(settings, CancellationToken.None);
if (args is ["pass", .. string[] sizes]) return await PassCommand.RunAsync(sizes, CancellationToken.None);
if (args is ["outlook", .. string[] counts]) return OutlookCommand.Run(counts);
BenchmarkSwitcher.FromAssembly(typeof(Program).Assembly).Run(args);
return 0;
