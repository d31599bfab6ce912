namespace GddWatch.Feeds.Faults;

/// <summary>Which faults are alike, so that thousands of one kind are not all told.</summary>
internal enum FaultKind
{
    Files,
    WrittenWhileRead,
    Header,
    Quotes,
    FieldCount,
    LongLine,
    Date,
    NotANumber,
    OutsideRecords,
    MinimumAboveMaximum,
    Duplicate,
    Order,
    Gap,
    SiteColumn,
    Unit,
    Mixing,
    Position,
    SetAside,
    Station,
    Reply,
}
