namespace GddWatch.Feeds;

/// <summary>A feed as configured. The cases are the kinds of feed.</summary>
public abstract record FeedDefinition
{
    private protected FeedDefinition()
    {
    }
}
