using System.Diagnostics;

namespace GddWatch.Watching.Health;

/// <summary>The stretches of a pass as traces show them: pass, and in it fetch, judge and deliver.</summary>
internal static class Spans
{
    /// <summary>The name under which traces find them.</summary>
    public const string Name = "gddwatch";

    private static readonly ActivitySource Source = new(Name);

    public static Activity? Pass() => Source.StartActivity("pass");

    public static Activity? Fetch() => Source.StartActivity("fetch");

    public static Activity? Judge() => Source.StartActivity("judge");

    public static Activity? Deliver() => Source.StartActivity("deliver");
}
