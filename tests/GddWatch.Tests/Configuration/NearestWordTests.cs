using GddWatch.Configuration.Yaml;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class NearestWordTests
{
    // kitten and sitting are the textbook pair of this measure, three edits apart (common practice); a swap of neighbours is one edit.
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("flaw", "lawn", 2)]
    [InlineData("lawn", "lanw", 1)]
    [InlineData("", "lawn", 4)]
    [InlineData("lawn", "lawn", 0)]
    public void Edits_are_counted_as_the_textbooks_do(string left, string right, int edits)
    {
        Assert.Equal(edits, NearestWord.Edits(left, right));
        Assert.Equal(edits, NearestWord.Edits(right, left));
    }

    [Theory]
    [InlineData("latitud", "latitude")]
    [InlineData("Latitude", "latitude")]
    [InlineData("longtiude", "longitude")]
    [InlineData("weather", null)]
    [InlineData("", null)]
    public void The_nearest_word_is_offered_only_where_it_is_near(string written, string? nearest) =>
        Assert.Equal(nearest, NearestWord.Of(written, ["latitude", "longitude", "id"]));
}
