namespace GddWatch.Storage.Sql;

/// <summary>The statements that only SQLite has: settings of a connection, and questions to the file as a whole.</summary>
internal static class SqliteSql
{
    public const string KeepLogAhead = "pragma journal_mode = wal";

    // FULL: a commit is on the disk when it returns, even if the power goes. NORMAL would be faster and could never damage the file, but after a power cut
    // the last commits may be gone, among them the record that a mail was delivered, and the mail would go out twice.
    public const string FlushEachCommit = "pragma synchronous = full";

    public const string QuickCheck = "pragma quick_check(1)";

    public const string IntegrityCheck = "pragma integrity_check(100)";

    public const string ForeignKeyCheck = "pragma foreign_key_check";

    public const string BeginWriting = "begin immediate";

    public const string Commit = "commit";

    public const string Rollback = "rollback";

    public const string TableNames = "select name from sqlite_schema where type = 'table' and name not like 'sqlite@_%' escape '@' order by name";

    public const string AppliedChanges = "select ScriptName from schema_version order by SchemaVersionID";
}
