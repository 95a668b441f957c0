using System.Diagnostics;
using System.Globalization;
using Npgsql;
using Ohmstead.Storage.Tests.Databases;

[assembly: AssemblyFixture(typeof(PostgresServer))]

namespace Ohmstead.Storage.Tests.Databases;

/// <summary>
/// A PostgreSQL of the tests' own, from the programs that Debian's package brings: made in a folder that is thrown away, at a port of this
/// machine, when the first test asks for it. It writes nothing through to the disk: what the machine does is not tested, what the server does is.
/// </summary>
public sealed class PostgresServer : IAsyncDisposable
{
    /// <summary>The collection of tests that use it: one stops it, and the others must not ask just then.</summary>
    public const string Alone = "postgres";

    /// <summary>The server refuses to run as root; this account comes with the package.</summary>
    private const string Account = "postgres";

    private readonly SemaphoreSlim turn = new(1, 1);
    private string? folder;
    private readonly HashSet<string> made = [];

    /// <summary>Where it listens.</summary>
    public int Port { get; private set; }

    private string Cluster => Path.Combine(folder!, "cluster");

    /// <summary>An empty database. The tables that an earlier test of the same name left are emptied: to make a new one takes longer.</summary>
    /// <returns>Its address.</returns>
    public async Task<string> DatabaseAsync(string name)
    {
        await StartedAsync();
        if (made.Add(name))
            await RunSqlAsync($"CREATE DATABASE \"{name}\"");
        else
            await RunSqlAsync("""TRUNCATE "Entries", "Units", "Documents", "Photos", "PhotoContents" """, name);
        return AddressOf(name);
    }

    /// <summary>Asks it something as its owner.</summary>
    public async Task RunSqlAsync(string sql, string database = "postgres")
    {
        await using var connection = new NpgsqlConnection(AddressOf(database) + ";Pooling=false");
        await connection.OpenAsync();
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync();
    }

    /// <summary>The address of a database of it, asked for by its owner.</summary>
    public string AddressOf(string database, int? port = null) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port ?? Port};Database={database};Username={Account}");

    /// <summary>Ends it: "fast" cuts every program off, "immediate" is as if it were killed.</summary>
    public void Stop(string mode) => Tool("pg_ctl", "stop", "-w", "-D", Cluster, "-m", mode);

    /// <summary>Starts it again.</summary>
    public void Start() =>
        Tool(
            "pg_ctl",
            "start",
            "-w",
            "-D",
            Cluster,
            "-l",
            Path.Combine(folder!, "log"),
            "-o",
            string.Create(
                CultureInfo.InvariantCulture,
                $"-p {Port} -c listen_addresses=127.0.0.1 -k {folder} -c fsync=off -c full_page_writes=off -c max_connections=60"
            )
        );

    public ValueTask DisposeAsync()
    {
        turn.Dispose();
        if (folder is null)
            return ValueTask.CompletedTask;
        try
        {
            Stop("immediate");
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
        return ValueTask.CompletedTask;
    }

    /// <summary>Starts it, unless it runs.</summary>
    public async Task StartedAsync()
    {
        await turn.WaitAsync();
        try
        {
            if (folder is not null)
                return;
            folder = Directory.CreateTempSubdirectory("ohmstead-postgres-").FullName;
            if (Environment.UserName == "root")
                Run("chown", Account, folder);
            Port = FreePort();
            Tool("initdb", "-D", Cluster, "-U", Account, "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8", "--no-sync");
            Start();
        }
        finally
        {
            turn.Release();
        }
    }

    internal static int FreePort()
    {
        using var door = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        door.Start();
        return ((System.Net.IPEndPoint)door.LocalEndpoint).Port;
    }

    private static void Tool(string program, params string[] arguments)
    {
        var path = Directory.Exists("/usr/lib/postgresql")
            ? Directory
                .GetDirectories("/usr/lib/postgresql")
                .OrderDescending(StringComparer.Ordinal)
                .Select(d => Path.Combine(d, "bin", program))
                .FirstOrDefault(File.Exists)
            : null;
        path ??= program;
        if (Environment.UserName == "root")
            Run("runuser", ["-u", Account, "--", path, .. arguments]);
        else
            Run(path, arguments);
    }

    private static void Run(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program) { WorkingDirectory = "/" };
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        try
        {
            // What it says goes where the tests' own words go: a server that inherits a pipe would keep it open.
            using var process = Process.Start(start)!;
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)} failed");
        }
        catch (System.ComponentModel.Win32Exception missing)
        {
            Assert.Fail($"{program} is not here ({missing.Message}). Install PostgreSQL: apt-get install postgresql");
        }
    }
}
