using System.Net.Sockets;
using Npgsql;

namespace GddWatch.Storage.Dialects;

/// <summary>What PostgreSQL's refusals mean for whoever runs the service.</summary>
internal static class PostgresFaults
{
    // idle_in_transaction_session_timeout (postgresql.org, Appendix A, MEMORY); the provider has no name for it.
    private const string IdleInTransaction = "25P03";

    /// <summary>Whether it is the database's fault at all.</summary>
    public static bool IsFault(Exception fault) => fault is NpgsqlException or SocketException or IOException or TimeoutException;

    /// <summary>Whether the same work may succeed when it is done again a little later.</summary>
    public static bool MayPass(Exception fault) => fault switch
    {
        PostgresException refused => refused.IsTransient || refused.SqlState is PostgresErrorCodes.SerializationFailure or PostgresErrorCodes.DeadlockDetected
            or PostgresErrorCodes.AdminShutdown or PostgresErrorCodes.CrashShutdown or PostgresErrorCodes.CannotConnectNow or IdleInTransaction,
        NpgsqlException { IsTransient: true } => true,
        NpgsqlException { InnerException: { } inner } => MayPass(inner),
        SocketException or IOException or TimeoutException => true,
        _ => false,
    };

    public static StorageException Explain(string where, Exception fault) => new(Sentence(where, fault), fault) { MayPass = MayPass(fault) };

    public static string Waiting(string where, Exception fault, TimeSpan pause) =>
        FormattableString.Invariant($"The database '{where}' does not answer ({Words(fault)}). Trying again in {pause.TotalSeconds:0.#} s; nothing is lost.");

    private static string Sentence(string where, Exception fault) => fault switch
    {
        PostgresException { SqlState: PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification } =>
            $"The database '{where}' refuses the login ({Words(fault)}). Check the user in Storage:Connection and the password in Storage__Password or Storage:PasswordFile.",
        PostgresException { SqlState: PostgresErrorCodes.InvalidCatalogName } =>
            $"There is no database '{where}'. Create it on the server (createdb), empty, and start again; its tables are made by this program.",
        PostgresException { SqlState: PostgresErrorCodes.InsufficientPrivilege } =>
            $"The database '{where}' does not let this user do its work ({Words(fault)}). Make the user its owner, or grant it the right to create and change tables.",
        PostgresException { SqlState: PostgresErrorCodes.LockNotAvailable } =>
            $"The database '{where}' is in use by another program. Stop that program, or wait until it has finished, and try again.",
        PostgresException { SqlState: PostgresErrorCodes.DiskFull } =>
            $"The disk of the database '{where}' is full. Free some space and try again; what was kept before is safe.",
        _ when MayPass(fault) =>
            $"The database '{where}' does not answer ({Words(fault)}). Check that the server runs and can be reached; what was kept before is safe.",
        _ => $"The database '{where}' could not be used ({Words(fault)}).",
    };

    private static string Words(Exception fault) => fault is PostgresException refused ? refused.MessageText : fault.GetBaseException().Message.TrimEnd('.');
}
