using GddWatch.Watching;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Watching;

public sealed class LineLogTests : IDisposable
{
    private readonly StringWriter lines = new() { NewLine = "\n" };

    [Fact]
    public void An_entry_is_one_line_with_the_regions_own_time_and_no_name_of_a_type()
    {
        ILogger log = Log(underSystemd: false);
        Say(log, LogLevel.Information, "Mails delivered: 3.");
        Say(log, LogLevel.Warning, "A server said\r\nQUIT\u001b[31m and more");
        Say(log, LogLevel.Error, "It broke:", new InvalidOperationException("the wire is cut"));
        Assert.Equal(
            """
            2026-07-01 06:00:05 -05:00  Mails delivered: 3.
            2026-07-01 06:00:05 -05:00  warning: A server said QUIT [31m and more
            2026-07-01 06:00:05 -05:00  error: It broke: the wire is cut

            """,
            lines.ToString());
    }

    [Fact]
    public void Under_systemd_an_entry_begins_with_its_seriousness_and_leaves_the_time_to_the_journal()
    {
        ILogger log = Log(underSystemd: true);
        Say(log, LogLevel.Information, "Well.");
        Say(log, LogLevel.Warning, "Less well.");
        Say(log, LogLevel.Critical, "Over.");
        Assert.Equal("<6>Well.\n<4>Less well.\n<2>Over.\n", lines.ToString());
    }

    public void Dispose() => lines.Dispose();

    private static void Say(ILogger log, LogLevel level, string words, Exception? fault = null) => log.Log(level, new EventId(1), words, fault, (said, _) => said);

    private LineLog Log(bool underSystemd) => new(
        lines, new FakeTimeProvider(new DateTimeOffset(2026, 7, 1, 11, 0, 5, TimeSpan.Zero)), TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"), underSystemd);
}
