namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// The values of one variable within some days of a place in the year, sorted. From one place to the next a day goes and a day comes, so that nothing need be sorted again.
/// </summary>
internal sealed class SortedWindow(EarlierYears years, WeatherVariable variable, int halfDays)
{
    private double[] sortedC = [];
    private double[] spare = [];
    private int count;
    private int version = -1;
    private int place = -1;

    /// <summary>The values about a place, from cold to warm [°C].</summary>
    public ReadOnlySpan<double> At(int newPlace)
    {
        if (version == years.Version && newPlace == place + 1) Slide();
        else Gather(newPlace);
        (version, place) = (years.Version, newPlace);
        return sortedC.AsSpan(0, count);
    }

    private void Gather(int newPlace)
    {
        count = 0;
        for (int i = newPlace - halfDays; i <= newPlace + halfDays; i++)
        {
            ReadOnlySpan<double> day = years.SortedDay(variable, i);
            MakeRoom(ref sortedC, count + day.Length);
            day.CopyTo(sortedC.AsSpan(count));
            count += day.Length;
        }

        sortedC.AsSpan(0, count).Sort();
    }

    private void Slide()
    {
        ReadOnlySpan<double> gone = years.SortedDay(variable, place - halfDays);
        ReadOnlySpan<double> come = years.SortedDay(variable, place + halfDays + 1);
        MakeRoom(ref spare, count - gone.Length + come.Length);
        (int left, int added, int written) = (0, 0, 0);
        foreach (double valueC in sortedC.AsSpan(0, count))
        {
            if (left < gone.Length && gone[left] == valueC)
            {
                left++;
                continue;
            }

            while (added < come.Length && come[added] < valueC) spare[written++] = come[added++];
            spare[written++] = valueC;
        }

        while (added < come.Length) spare[written++] = come[added++];
        count = written;
        (sortedC, spare) = (spare, sortedC);
    }

    private static void MakeRoom(ref double[] values, int needed)
    {
        if (values.Length < needed) Array.Resize(ref values, needed * 2);
    }
}
