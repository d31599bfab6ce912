namespace GddWatch.Commands;

/// <summary>What the program tells its caller.</summary>
internal static class ExitCode
{
    public const int Done = 0;

    public const int Failed = 1;

    public const int WrongUsageOrConfiguration = 2;
}
