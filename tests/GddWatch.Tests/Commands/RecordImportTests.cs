using GddWatch.Storage;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>The journal as people bring it in files.</summary>
public sealed class RecordImportTests : IDisposable
{
    private readonly Workshop workshop = Workshop.WithSamples();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Table => Path.Combine(workshop.Folder, "journal.csv");

    public void Dispose() => workshop.Dispose();

    [Fact]
    public async Task An_import_keeps_its_good_rows_and_tells_all_faults_with_their_places()
    {
        Ran ran = await ImportAsync("""
            kind,site,on,treatment,depth,value,at
            done,north-common,2026-01-05,overseeding,,,
            mowing,north-comon,2026-01-06,,,,
            reading,mill-green,,,2 in,48 F,2026-01-07 07:30
            done,mill-green,yesterday,overseding,,,
            mowing,mill-green,,,,,
            mowing,mill-green,2026-01-08,,
            sprayed,mill-green,2026-01-08,,,,
            """);
        Assert.Equal(1, ran.Code);
        Assert.Contains("Recorded: 2. Already there: 0. Left out: 5.", ran.Output, StringComparison.Ordinal);
        foreach (string part in new[] { "line 3, column site", "line 5, column treatment", "line 5, column on", "line 6, column on", "line 7, column", "line 8, column kind" })
        {
            Assert.Contains(part, ran.Error, StringComparison.Ordinal);
        }

        Assert.Contains("Recorded: 0. Already there: 2.", (await workshop.RunAsync("record", "import", Table)).Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(",mill-green,2026-01-08,,,,,,,,", "line 3, column kind: ")]
    [InlineData("mowin,mill-green,2026-01-08,,,,,,,,", "Found: \"mowin\". Accepted: \"mowing\" is the nearest")]
    [InlineData("mowing,,2026-01-08,,,,,,,,", "line 3, column site: No site is named. Accepted: one of north-common")]
    [InlineData("mowing,mil-green,2026-01-08,,,,,,,,", "\"mill-green\" is the nearest")]
    [InlineData("mowing,mill-green,08.01.2026,,,,,,,,", "line 3, column on: This is not a day as it is written here. Found: \"08.01.2026\". Accepted: year, month and day")]
    [InlineData("mowing,mill-green,,,,,,,,,", "line 3, column on: The day is missing.")]
    [InlineData("mowing,mill-green,2026-01-16,,,,,,,,", "line 3, column on: This day is still to come.")]
    [InlineData("mowing,mill-green,0026-01-08,,,,,,,,", "line 3, column on: This day is before the year 1900.")]
    [InlineData("mowing,mill-green,2026-01-08,,overseeding,,,,,,", "line 3, column treatment: An entry of the kind mowing has no treatment.")]
    [InlineData("done,mill-green,2026-01-08,,,,,,,,", "line 3, column treatment: No treatment is named.")]
    [InlineData("done,mill-green,2026-01-08,,overseding,,,,,,", "\"overseeding\" is the nearest")]
    [InlineData("done,mill-green,2026-01-08,,overseeding,,2026-01-07,,,,", "line 3, column no-seed-until: The label's date is before the day of the treatment.")]
    [InlineData("done,mill-green,2026-01-08,,overseeding,,later,,,,", "line 3, column no-seed-until: This is not a day")]
    [InlineData("sighting,mill-green,2026-01-08,,,,,,,,", "line 3, column what: ")]
    [InlineData("sighting,mill-green,2026-01-08,,,,,First Beetle,,,", "Found: \"First Beetle\". Accepted: lower-case letters")]
    [InlineData("reading,mill-green,,,,,,,5 cm,51 °F,", "line 3, column at: It is missing.")]
    [InlineData("reading,mill-green,,2026-01-08 8am,,,,,5 cm,51 °F,", "line 3, column at: This is not a day and time")]
    [InlineData("reading,mill-green,,2026-01-16,,,,,5 cm,51 °F,", "line 3, column at: This day is still to come.")]
    [InlineData("reading,mill-green,2026-01-08,2026-01-08,,,,,5 cm,51 °F,", "line 3, column on: An entry of the kind reading has no on.")]
    [InlineData("reading,mill-green,,2026-01-08,,,,,5,51 °F,", "line 3, column depth: A depth needs its unit beside the number.")]
    [InlineData("reading,mill-green,,2026-01-08,,,,,1 cm,51 °F,", "line 3, column depth: The soil temperature is not estimated at this depth.")]
    [InlineData("reading,mill-green,,2026-01-08,,,,,5 cm,51,", "line 3, column value: A temperature needs its unit beside the number.")]
    [InlineData("reading,mill-green,,2026-01-08,,,,,5 cm,59 °C warm,", "line 3, column value: This is not a temperature")]
    [InlineData("reading,mill-green,,2026-01-08,,,,,5 cm,-40 °C,", "line 3, column value: No soil under turf is that cold or warm.")]
    [InlineData("mowing,mill-green,2026-01-08,,,,,,,", "The row has 10 cells and the header 11: this one is the first that is missing.")]
    [InlineData("mowing,mill-green,2026-01-08,,,,,,,,\"half", "line 3: The quotation marks do not close.")]
    [InlineData("mowing,north-common,2026-01-05,,,,,,,,half", "line 3: Line 2 says otherwise of the same thing on the same day.")]
    public async Task A_bad_row_is_told_with_its_place_and_costs_neither_the_row_before_nor_the_one_behind(string row, string fault)
    {
        Ran ran = await ImportAsync(
            $"kind,site,on,at,treatment,active,no-seed-until,what,depth,value,note\nmowing,north-common,2026-01-05,,,,,,,,\n{row}\nmowing,quarry-park,2026-01-09,,,,,,,,\n");

        Assert.Equal(1, ran.Code);
        Assert.Contains(fault, ran.Error, StringComparison.Ordinal);
        Assert.Contains("Recorded: 2. Already there: 0. Left out: 1.", ran.Output, StringComparison.Ordinal);
        Assert.Contains("Mend these and import the file again: rows that are already there change nothing.", ran.Error, StringComparison.Ordinal);
        Assert.Equal(["north-common", "quarry-park"], (await HistoryAsync()).Select(kept => kept.Entry.SiteId));
        Assert.Contains("Recorded: 0. Already there: 2. Left out: 1.", (await workshop.RunAsync("record", "import", Table)).Output, StringComparison.Ordinal);
        Assert.Equal(2, (await HistoryAsync()).Count);
    }

    [Theory]
    [InlineData("kind,site,on,treatmant\ndone,north-common,2026-01-05,overseeding\n", "line 1, column treatmant: There is no such column. Found: \"treatmant\". Accepted: \"treatment\" is the nearest")]
    [InlineData("kind,on\nmowing,2026-01-05\n", "line 1, column site: The column site is missing.")]
    [InlineData("kind,site,on,on\nmowing,north-common,2026-01-05,2026-01-05\n", "line 1, column on: This column is there twice.")]
    [InlineData("kind;site;on\nmowing;north-common;2026-01-05\n", "line 1: The cells are not divided by commas.")]
    [InlineData("kind,site,\"on\nmowing,north-common,2026-01-05\n", "line 1: The quotation marks do not close.")]
    [InlineData("\n\n", "The file is empty.")]
    public async Task A_file_without_a_usable_header_records_nothing_and_says_what_is_wrong_with_the_header_alone(string text, string fault)
    {
        Ran ran = await ImportAsync(text);

        Assert.Equal(1, ran.Code);
        Assert.StartsWith("Nothing was recorded:", ran.Error, StringComparison.Ordinal);
        Assert.Contains(fault, ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("line 2", ran.Error, StringComparison.Ordinal);
        Assert.Empty(await HistoryAsync());
    }

    [Fact]
    public async Task A_file_that_is_not_there_or_not_in_UTF_8_is_refused()
    {
        Assert.Contains("cannot be read", (await workshop.RunAsync("record", "import", Table)).Error, StringComparison.Ordinal);
        await File.WriteAllBytesAsync(Table, [.. "kind,site,note\n"u8, 0xB0, 0x43], Stop);
        Ran ran = await workshop.RunAsync("record", "import", Table);
        Assert.Equal(1, ran.Code);
        Assert.Contains("not in UTF-8", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_table_from_another_program_reads_with_its_mark_line_ends_and_order_of_columns()
    {
        byte[] table = [0xEF, 0xBB, 0xBF, .. "note,on,site,kind\r\n\"half, north\",2026-01-05,north-common,mowing\r\n,,,\r\n,2026-01-06,north-common,mowing\r\n"u8];
        await File.WriteAllBytesAsync(Table, table, Stop);

        Ran ran = await workshop.RunAsync("record", "import", Table);

        Assert.Equal(("Recorded: 2. Already there: 0. Left out: 0.\n", ""), (ran.Output, ran.Error));
        Assert.Equal(["half, north", ""], (await HistoryAsync()).Select(kept => kept.Entry.Note));
    }

    [Fact]
    public async Task The_same_file_again_undoes_neither_a_correction_nor_a_withdrawal_and_a_mended_row_is_a_correction()
    {
        string first = "kind,site,on,at,depth,value\nreading,mill-green,,2026-01-01,5 cm,51 F\nmowing,mill-green,2026-01-02,,,\nmowing,mill-green,2026-01-03,,,\nmowing,mill-green,2026-01-04,,,\n";
        await ImportAsync(first);
        await workshop.RunAsync("record", "reading", "--site", "mill-green", "--at", "2026-01-01", "--depth", "5 cm", "--value", "52 F");
        await workshop.RunAsync("record", "mowing", "--site", "mill-green", "--on", "2026-01-05", "--instead-of", "2");
        await workshop.RunAsync("record", "withdraw", "3", "--because", "another lawn");
        IReadOnlyList<KeptEntry> before = await HistoryAsync();

        Ran again = await ImportAsync(first);

        Assert.Equal((0, "Recorded: 0. Already there: 1. Left out: 0. Mended or withdrawn before, and left so: 3.\n"), (again.Code, again.Output));
        Assert.Contains("Line 2, soil at 2 inches 51 °F at Mill Green on Thursday 1 January 2026, mean of the day, was recorded as number 1 and then mended by number 5", again.Error, StringComparison.Ordinal);
        Assert.Contains("Line 4, mowed at Mill Green on Saturday 3 January 2026, was recorded as number 3 and then withdrawn: another lawn", again.Error, StringComparison.Ordinal);
        Assert.Equal(before, await HistoryAsync());

        Ran mended = await ImportAsync(first.Replace("51 F", "53 F", StringComparison.Ordinal));
        Assert.StartsWith("Recorded: 1, of which 1 in the place of an earlier entry, which is kept in the history.", mended.Output, StringComparison.Ordinal);
        Assert.Equal(7, (await HistoryAsync())[4].ReplacedBy);
    }

    private Task<IReadOnlyList<KeptEntry>> HistoryAsync() => Journals.LoadHistoryAsync(workshop.Keeping, Stop);

    private async Task<Ran> ImportAsync(string text)
    {
        await File.WriteAllTextAsync(Table, text, Stop);
        return await workshop.RunAsync("record", "import", Table);
    }
}
