namespace GddWatch.Agronomy.Soil;

/// <summary>What a published model carries from day to day.</summary>
internal interface IAirDrivenState
{
    /// <summary>Soil temperature at the end of the last day [°C].</summary>
    double SoilC { get; }

    /// <summary>Begins with a first day, or begins again after a hole.</summary>
    void Start(in AirDay day);

    /// <summary>Goes one day on.</summary>
    void Step(in AirDay day);
}
