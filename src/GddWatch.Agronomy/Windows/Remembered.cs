namespace GddWatch.Agronomy.Windows;

/// <summary>Things that were worked out from days up to some day, and hold as long as none of those changes.</summary>
internal sealed class Remembered<TKey, TValue>
    where TKey : notnull
{
    private readonly Dictionary<TKey, (TValue Value, DateOnly Through)> known = [];

    /// <summary>What is remembered under a key; nothing of use where nothing is.</summary>
    public bool TryGet(TKey key, out TValue? value)
    {
        bool isKnown = known.TryGetValue(key, out (TValue Value, DateOnly Through) one);
        value = one.Value;
        return isKnown;
    }

    /// <summary>Remembers a value under a key, and gives it.</summary>
    /// <param name="key">The key.</param>
    /// <param name="value">The value.</param>
    /// <param name="through">The last day that it rests on.</param>
    public TValue Keep(TKey key, TValue value, DateOnly through)
    {
        known[key] = (value, through);
        return value;
    }

    /// <summary>Forgets what rests on a day or on later ones.</summary>
    public void ForgetFrom(DateOnly day) => Forget((_, through) => through >= day);

    /// <summary>Forgets what is called so.</summary>
    public void Forget(Func<TKey, DateOnly, bool> isCalled)
    {
        foreach (TKey key in known.Where(each => isCalled(each.Key, each.Value.Through)).Select(each => each.Key).ToArray()) known.Remove(key);
    }
}
