using GddWatch.Validation;

const string Usage = """
    Checks the soil temperature models against measured soil temperature, and fillings against measured air temperature.

      soil-fit WEATHERFOLDER
          fits the constants of the default model and prints them, their errors, and the errors at stations left out
      soil-report WEATHERFOLDER OUTFOLDER
          writes OUTFOLDER/soil.html and OUTFOLDER/soil.csv
      window-report CONFIGFOLDER WEATHERFOLDER OUTFOLDER
          judges the treatments of a configuration from estimated and from measured soil, prints how far their openings lie apart, how often windows
          open again and how long before crabgrass the spring pre-emergent opens, and writes OUTFOLDER/windows.txt, windows.csv and curves.csv
      window-sweep CONFIGFOLDER WEATHERFOLDER
          tries other openings of the spring pre-emergent, chosen on half of the stations and looked at on the other half
      filling-report WEATHERFOLDER
          makes holes in measured air temperature, fills them and prints the errors by the way of filling and by the hole's length
      bud-break WEATHERFOLDER
          fits bud break of every species at Harvard Forest and prints how far years left out are off, beside the mean date
      hindcast [CONFIGFOLDER] WEATHERFOLDER OUTFOLDER
          says what would have been said of the days ahead in every season, scores it, and writes OUTFOLDER/hindcast.md and hindcast.csv; without a
          configuration for the passing of 10 °C by the measured soil alone

    WEATHERFOLDER holds uscrn-daily (stations.csv and one folder a year) and, where wanted, harvard-forest and met-eireann.
    An option --threads N says how many cores may be used; 2 unless said otherwise.
    """;

int threads = 2;
List<string> words = [.. args];
int option = words.IndexOf("--threads");
if (option >= 0)
{
    if (option + 1 >= words.Count || !int.TryParse(words[option + 1], out threads) || threads < 1)
    {
        Console.Error.WriteLine("--threads needs a whole number of cores, 1 or more.");
        return 2;
    }

    words.RemoveRange(option, 2);
}

try
{
    switch (words)
    {
        case ["soil-fit", string weather]:
            SoilFitCommand.Run(weather, Console.Out, threads);
            return 0;
        case ["soil-report", string weather, string folder]:
            SoilReportCommand.Run(weather, folder, threads);
            return 0;
        case ["window-report", string configuration, string weather, string folder]:
            await WindowReportCommand.RunAsync(configuration, weather, folder, CancellationToken.None);
            return 0;
        case ["window-sweep", string configuration, string weather]:
            await WindowSweepCommand.RunAsync(configuration, weather, Console.Out, CancellationToken.None);
            return 0;
        case ["filling-report", string weather]:
            FillingReportCommand.Run(weather, Console.Out);
            return 0;
        case ["bud-break", string weather]:
            BudBreakCommand.Run(weather, Console.Out);
            return 0;
        case ["hindcast", string weather, string folder]:
            await HindcastCommand.RunAsync(null, weather, folder, threads, CancellationToken.None);
            return 0;
        case ["hindcast", string configuration, string weather, string folder]:
            await HindcastCommand.RunAsync(configuration, weather, folder, threads, CancellationToken.None);
            return 0;
        default:
            Console.Error.WriteLine(Usage);
            return 2;
    }
}
catch (Exception fault) when (fault is IOException or InvalidDataException or UnauthorizedAccessException)
{
    Console.Error.WriteLine(fault.Message);
    return 1;
}
