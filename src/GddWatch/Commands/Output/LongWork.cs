using System.Globalization;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace GddWatch.Commands.Output;

/// <summary>Shows how far long work is, with its rate and the time left, to a person who watches; says nothing to a file.</summary>
internal static class LongWork
{
    /// <summary>Does the work and shows it on the error stream; the work calls what it is given after each part.</summary>
    /// <param name="terminal">Where to.</param>
    /// <param name="name">What is done, such as "Judging past seasons".</param>
    /// <param name="unit">What the parts are, such as "sites".</param>
    /// <param name="parts">How many parts there are.</param>
    /// <param name="work">The work.</param>
    public static async Task<T> ShowAsync<T>(Terminal terminal, string name, string unit, int parts, Func<Action, Task<T>> work)
    {
        if (!terminal.IsInteractive || parts < 2) return await work(() => { });
        return await terminal.Progress().Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RateColumn(unit), new RemainingTimeColumn())
            .StartAsync(async context =>
            {
                ProgressTask task = context.AddTask(Markup.Escape(name), maxValue: parts);
                return await work(() => task.Increment(1));
            });
    }

    private sealed class RateColumn(string unit) : ProgressColumn
    {
        public override IRenderable Render(RenderOptions options, ProgressTask task, TimeSpan deltaTime) =>
            new Text(task.Speed is { } speed ? string.Create(CultureInfo.InvariantCulture, $"{speed:0.#} {unit} a second") : "");
    }
}
