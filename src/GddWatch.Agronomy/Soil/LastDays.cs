using System.Runtime.CompilerServices;

namespace GddWatch.Agronomy.Soil;

/// <summary>The values of the last days, at most 30, without allocation.</summary>
internal struct LastDays
{
    private Ring ring;
    private int next;

    /// <summary>How many are held [days].</summary>
    public int Count { readonly get; private set; }

    public void Add(double value)
    {
        ring[next] = value;
        next = (next + 1) % Ring.Places;
        Count = Math.Min(Count + 1, Ring.Places);
    }

    /// <summary>Mean of the last so many days, or of those there are.</summary>
    public readonly double Mean(int days)
    {
        int there = Math.Min(days, Count);
        double sum = 0;
        for (int back = 1; back <= there; back++) sum += Back(back - 1);
        return sum / there;
    }

    /// <summary>The value of so many days ago, 0 for the last.</summary>
    public readonly double Back(int days) => ring[(next - 1 - days + 2 * Ring.Places) % Ring.Places];

    [InlineArray(Places)]
    private struct Ring
    {
        public const int Places = 30;
        private double first;
    }
}
