using GddWatch.Agronomy.Chances;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class SeededDrawsTests
{
    [Fact]
    public void The_published_generator_gives_its_known_first_outputs()
    {
        // First outputs of SplitMix64 for the seed 1234567, as listed with reference implementations (MEMORY).
        var draws = new SeededDraws(1234567);
        Assert.Equal(6457827717110365317UL, draws.Next());
        Assert.Equal(3203168211198807973UL, draws.Next());
        Assert.Equal(9817491932198370423UL, draws.Next());
    }

    [Fact]
    public void The_hash_of_a_text_is_the_published_one()
    {
        // FNV-1a, 64 bits, of "a" is 0xaf63dc4c8601ec8c (published test value, MEMORY); the day is hashed after it.
        ulong ofA = 0xaf63dc4c8601ec8c;
        Assert.Equal(unchecked((ofA ^ 738000UL) * 0x100000001B3UL), SeededDraws.SeedOf("a", DateOnly.FromDayNumber(738000)));
    }

    [Fact]
    public void Normal_scores_have_mean_0_and_variance_1_whatever_the_order()
    {
        var draws = new SeededDraws(7);
        double[] scores = draws.NormalScores(13);
        Assert.Equal(0, scores.Average(), 9);
        Assert.Equal(1, scores.Average(score => score * score), 9);
        Assert.NotEqual(scores, draws.NormalScores(13));
        Assert.Equal(scores, new SeededDraws(7).NormalScores(13));
    }
}
