using GddWatch.InventedWeather;

if (args is not [string folder] || !Directory.Exists(folder))
{
    await Console.Error.WriteLineAsync(
        "Give one existing folder to write the files to, for example: dotnet run --project data-samples/generator -- data-samples");
    return 2;
}

foreach (InventedClimate climate in AlderReach.Climates)
{
    string path = Path.Combine(folder, InventedFile.NameOf(climate));
    await File.WriteAllTextAsync(path, InventedFile.Compose(climate, AlderReach.FirstDay, AlderReach.LastDay, AlderReach.Seed));
    Console.WriteLine($"{path}: invented weather from {AlderReach.FirstDay:yyyy-MM-dd} to {AlderReach.LastDay:yyyy-MM-dd}");
}

return 0;
