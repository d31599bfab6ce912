using GddWatch.Agronomy.Journal;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class JournalBookTests
{
    [Fact]
    public void What_another_entry_stands_for_no_longer_stands_itself()
    {
        var wrong = new KeptEntry(1, new Mowing { SiteId = "a", On = Kept.Day }, Kept.Morning, null, null, "");
        KeptEntry right = wrong with { Number = 2, Entry = wrong.Entry with { SiteId = "b" } };
        JournalBook book = new([wrong]);

        book.Replace(wrong, 2);
        book.Add(right);

        Assert.Null(book.SameThing(wrong.Entry));
        Assert.Equal(2, book.Settled(wrong.Entry)!.ReplacedBy);
        Assert.Equal(right, book.SameThing(right.Entry));
        Assert.Null(book.ToMend(1, right.Entry));
        Assert.Throws<JournalNumberException>(() => book.ToMend(1, wrong.Entry));
    }
}
