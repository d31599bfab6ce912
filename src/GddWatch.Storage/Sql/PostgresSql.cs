namespace GddWatch.Storage.Sql;

/// <summary>
/// The statements that only PostgreSQL has. Locks go by two numbers: 1734632567 is ours ("gddw" as four bytes), the second says what is locked: 1 the form of the
/// database, 2 writing, 3 judging. A lock ends with its session, so a worker that dies leaves none behind.
/// </summary>
internal static class PostgresSql
{
    public const string WaitForForm = "select pg_advisory_lock(1734632567, 1)";

    public const string FreeForm = "select pg_advisory_unlock(1734632567, 1)";

    // Until the transaction ends. Readers are not kept waiting, nor is the queue, which locks its rows.
    public const string WaitForWriting = "select pg_advisory_xact_lock(1734632567, 2)";

    public const string TakeJudging = "select pg_try_advisory_lock(1734632567, 3)";

    public const string FreeJudging = "select pg_advisory_unlock(1734632567, 3)";

    public const string HoldsJudging = """
        select exists (
            select 1 from pg_locks
            where locktype = 'advisory' and classid = 1734632567 and objid = 3 and granted and pid = pg_backend_pid()
                and database = (select oid from pg_database where datname = current_database()))
        """;

    // A server that says "kept" before it is on the disk may forget after a power cut that a mail was delivered.
    public const string WaitsForDisk = "select current_setting('fsync') = 'on' and current_setting('synchronous_commit') <> 'off'";

    public const string SchemaName = "select current_schema()";

    public const string TableNames = "select tablename from pg_tables where schemaname = current_schema() order by tablename";

    public const string AppliedChanges = "select scriptname from schema_version order by schemaversionsid";
}
