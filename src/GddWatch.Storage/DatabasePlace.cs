using GddWatch.Storage.Dialects;
using Npgsql;

namespace GddWatch.Storage;

/// <summary>Where a database is. Its text is for people and never holds a password.</summary>
public abstract record DatabasePlace
{
    private DatabasePlace()
    {
    }

    /// <summary>Whether something can be kept there already; a place where nobody has kept anything yet need not be opened to be read.</summary>
    public abstract bool MayHoldSomething { get; }

    /// <summary>A file of SQLite.</summary>
    /// <param name="Path">The file.</param>
    public sealed record InFile(string Path) : DatabasePlace
    {
        /// <inheritdoc/>
        public override bool MayHoldSomething => File.Exists(Path);

        /// <inheritdoc/>
        public override string ToString() => Path;
    }

    /// <summary>A database on a PostgreSQL server.</summary>
    public sealed record OnServer : DatabasePlace
    {
        private OnServer(string connection, string words)
        {
            Connection = connection;
            Words = words;
        }

        /// <inheritdoc/>
        public override bool MayHoldSomething => true;

        /// <summary>The connection string, with the password.</summary>
        internal string Connection { get; }

        private string Words { get; }

        /// <summary>Reads a connection string.</summary>
        /// <param name="connection">The connection string, with or without a password.</param>
        /// <param name="password">The password; null where there is none beside the connection string.</param>
        /// <param name="problem">What is wrong with it, as a clause that shows no value; empty where it can be used.</param>
        /// <returns>The place, or null where the string cannot be used.</returns>
        public static OnServer? Read(string connection, string? password, out string problem)
        {
            NpgsqlConnectionStringBuilder read;
            try
            {
                read = new NpgsqlConnectionStringBuilder(connection);
            }
            catch (Exception fault) when (fault is ArgumentException or FormatException or NotSupportedException or InvalidOperationException)
            {
                problem = "this is not a connection string of PostgreSQL, or one of its keys is not known or has a value that it cannot have";
                return null;
            }

            if (string.IsNullOrWhiteSpace(read.Host) || string.IsNullOrWhiteSpace(read.Database) || string.IsNullOrWhiteSpace(read.Username))
            {
                problem = "it must say which server, which database and which user: Host, Database and Username are needed";
                return null;
            }

            if (password is not null && !string.IsNullOrEmpty(read.Password))
            {
                problem = "there is a password in it and another one besides";
                return null;
            }

            if (password is not null) read.Password = password;
            if (!IsThisMachine(read.Host))
            {
                if (!read.ShouldSerialize("SSL Mode")) read.SslMode = SslMode.VerifyFull;
                if (read.SslMode is SslMode.Disable or SslMode.Allow or SslMode.Prefer)
                {
                    problem = "what is kept, and the password, would cross the net in the clear";
                    return null;
                }
            }

            problem = "";
            return new OnServer(PostgresDialect.Complete(read), $"{read.Database} on {read.Host}:{read.Port}");
        }

        /// <summary>Whether a connection string holds a password.</summary>
        public static bool HoldsPassword(string connection)
        {
            try
            {
                return !string.IsNullOrEmpty(new NpgsqlConnectionStringBuilder(connection).Password);
            }
            catch (Exception fault) when (fault is ArgumentException or FormatException or NotSupportedException or InvalidOperationException)
            {
                return connection.Contains("password", StringComparison.OrdinalIgnoreCase) || connection.Contains("pwd", StringComparison.OrdinalIgnoreCase);
            }
        }

        /// <inheritdoc/>
        public override string ToString() => Words;

        /// <summary>A server named by its address in this machine, or by the folder of its socket.</summary>
        private static bool IsThisMachine(string host) => host.Split(',').All(each =>
            each.StartsWith('/') || each.StartsWith("localhost", StringComparison.OrdinalIgnoreCase) && (each.Length == 9 || each[9] == ':')
            || System.Net.IPEndPoint.TryParse(each, out System.Net.IPEndPoint? end) && System.Net.IPAddress.IsLoopback(end.Address));
    }
}
