namespace GddWatch.Watching;

/// <summary>Whether the worker ended well; read once it has stopped.</summary>
internal sealed class WorkerOutcome
{
    public bool Failed { get; set; }
}
