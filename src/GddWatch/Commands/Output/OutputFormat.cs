namespace GddWatch.Commands.Output;

/// <summary>For whom a command prints.</summary>
internal enum OutputFormat
{
    People,
    Json,
    Csv,
}
