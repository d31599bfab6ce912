using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using GddWatch.Storage;
using Microsoft.Extensions.Time.Testing;
using Npgsql;
using Xunit;

[assembly: AssemblyFixture(typeof(GddWatch.Tests.Storage.PostgresCluster))]

namespace GddWatch.Tests.Storage;

/// <summary>
/// A PostgreSQL server of its own in a folder of its own, made from the programs that are installed, started when the first test asks for it and thrown away at the
/// end. Where they are not installed such tests are skipped, or fail if the environment variable GDDWATCH_REQUIRE contains "postgres".
/// </summary>
public sealed class PostgresCluster : IAsyncDisposable
{
    private const string Template = "gddwatch_template";

    // Several tests ask at once; one of them starts it.
    private readonly SemaphoreSlim turn = new(1, 1);

    // A database cannot be copied while another copy of it is being made from the same template.
    private readonly SemaphoreSlim copying = new(1, 1);

    private DirectoryInfo? folder;
    private string? programs;
    private string whyNot = "";
    private int port;
    private int made;

    private string DataFolder => Path.Combine(folder!.FullName, "data");

    /// <summary>The one that all tests share.</summary>
    public static async Task<PostgresCluster> SharedAsync()
    {
        PostgresCluster cluster = await TestContext.Current.GetFixture<PostgresCluster>() ?? throw new InvalidOperationException("The server is no fixture of this assembly.");
        await cluster.RequireAsync();
        return cluster;
    }

    /// <summary>Starts it unless it runs; where it cannot be, skips the test, or fails it where a server is required.</summary>
    public async Task RequireAsync()
    {
        await turn.WaitAsync();
        try
        {
            if (folder is null && whyNot.Length == 0) await MakeAsync();
        }
        finally
        {
            turn.Release();
        }

        if (whyNot.Length > 0) Outside.Missing("postgres", $"This test needs a PostgreSQL server of its own: {whyNot}");
    }

    /// <summary>The connection string of a database on it.</summary>
    public string Connection(string database) =>
        new NpgsqlConnectionStringBuilder { Host = "127.0.0.1", Port = port, Database = database, Username = "postgres" }.ConnectionString;

    /// <summary>A place on it that has no tables yet.</summary>
    public async Task<DatabasePlace.OnServer> NewEmptyAsync() => PlaceOf(await CreateAsync(from: null));

    /// <summary>A place on it that has this version's tables, all of them empty.</summary>
    public async Task<DatabasePlace.OnServer> NewAsync() => PlaceOf(await CreateAsync(Template));

    /// <summary>Stops it at once, as a crash would: sessions end, and whatever was not committed is gone.</summary>
    public Task CrashAsync() => RunAsync("pg_ctl", "-D", DataFolder, "-m", "immediate", "-w", "stop");

    /// <summary>Starts it again on the same port.</summary>
    public Task StartAsync() => RunAsync(
        "pg_ctl", "-D", DataFolder, "-w", "-t", "60", "-l", Path.Combine(folder!.FullName, "log"), "-o",
        string.Create(CultureInfo.InvariantCulture, $"-c listen_addresses=127.0.0.1 -c port={port} -c unix_socket_directories={folder.FullName} -c max_connections=300 -c fsync=off -c synchronous_commit=on -c full_page_writes=off"),
        "start");

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        turn.Dispose();
        copying.Dispose();
        if (folder is null) return;
        if (File.Exists(Path.Combine(DataFolder, "postmaster.pid"))) await CrashAsync();
        folder.Delete(recursive: true);
    }

    private async Task MakeAsync()
    {
        programs = Directory.Exists("/usr/lib/postgresql")
            ? Directory.EnumerateDirectories("/usr/lib/postgresql").Select(each => Path.Combine(each, "bin")).Where(each => File.Exists(Path.Combine(each, "initdb"))).Order(StringComparer.Ordinal).LastOrDefault()
            : null;
        if (programs is null)
        {
            whyNot = "no PostgreSQL is installed in /usr/lib/postgresql (on Debian: apt-get install postgresql).";
            return;
        }

        folder = Directory.CreateTempSubdirectory("gddwatch-postgres-");
        try
        {
            // The server refuses to run for root.
            if (Environment.IsPrivilegedProcess) await StartProcessAsync("chown", "postgres", folder.FullName);
            await RunAsync("initdb", "-D", DataFolder, "-A", "trust", "-U", "postgres", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync");
            port = FreePort();
            await StartAsync();
            await ExecuteAsync("postgres", $"create database {Template}");
            await using Database template = await Database.OpenAsync(PlaceOf(Template), new FakeTimeProvider(), _ => { }, CancellationToken.None);
        }
        catch (InvalidOperationException failure)
        {
            whyNot = failure.Message;
        }
    }

    private async Task<string> CreateAsync(string? from)
    {
        string name = string.Create(CultureInfo.InvariantCulture, $"test_{Interlocked.Increment(ref made)}");
        await copying.WaitAsync();
        try
        {
            await ExecuteAsync("postgres", from is null ? $"create database {name}" : $"create database {name} template {from}");
        }
        finally
        {
            copying.Release();
        }

        return name;
    }

    private DatabasePlace.OnServer PlaceOf(string database) => DatabasePlace.OnServer.Read(Connection(database), null, out string problem) ?? throw new InvalidOperationException(problem);

    private async Task ExecuteAsync(string database, string sql)
    {
        await using var connection = new NpgsqlConnection($"{Connection(database)};Pooling=false");
        await connection.OpenAsync();
        await using NpgsqlCommand command = connection.CreateCommand();
#pragma warning disable CA2100 // Names that stand above.
        command.CommandText = sql;
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }

    private Task RunAsync(string program, params string[] arguments) => Environment.IsPrivilegedProcess
        ? StartProcessAsync("runuser", ["-u", "postgres", "--", Path.Combine(programs!, program), .. arguments])
        : StartProcessAsync(Path.Combine(programs!, program), arguments);

    private static async Task StartProcessAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = "/" };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} could not be started.");
        string[] said = await Task.WhenAll(process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        await process.WaitForExitAsync();
        if (process.ExitCode != 0) throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}: {string.Concat(said)}");
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
