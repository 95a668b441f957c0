using System.Diagnostics;
using System.Globalization;
using Npgsql;

namespace Ohmstead.Perf.Stores;

/// <summary>A PostgreSQL of its own, from Debian's package, as it comes: what is written goes through to the disk. Thrown away at the end.</summary>
internal sealed class Cluster : IAsyncDisposable
{
    /// <summary>The server refuses to run as root; this account comes with the package.</summary>
    private const string Account = "postgres";

    private readonly string folder = Directory.CreateTempSubdirectory("ohmstead-cluster-").FullName;
    private readonly int port = FreePort();

    private string Files => Path.Combine(folder, "cluster");

    /// <summary>Makes and starts it.</summary>
    public static async Task<Cluster> StartAsync()
    {
        var cluster = new Cluster();
        if (Environment.UserName == "root")
            await RunAsync("chown", Account, cluster.folder);
        await ToolAsync("initdb", "-D", cluster.Files, "-U", Account, "-A", "trust", "-E", "UTF8", "--locale=C.UTF-8");
        var options = string.Create(CultureInfo.InvariantCulture, $"-p {cluster.port} -c listen_addresses=127.0.0.1 -k {cluster.folder}");
        await ToolAsync("pg_ctl", "start", "-w", "-D", cluster.Files, "-l", Path.Combine(cluster.folder, "log"), "-o", options);
        return cluster;
    }

    /// <summary>An empty database.</summary>
    /// <returns>Its address.</returns>
    public async Task<string> DatabaseAsync(string name)
    {
        await RunSqlAsync("postgres", $"CREATE DATABASE {name}");
        return AddressOf(name);
    }

    /// <summary>Tells it something as its owner.</summary>
    public async Task RunSqlAsync(string database, string sql)
    {
        await using var connection = new NpgsqlConnection(AddressOf(database) + ";Pooling=false;Command Timeout=0");
        await connection.OpenAsync();
#pragma warning disable CA2100 // What is told stands in this program.
        await using var command = new NpgsqlCommand(sql, connection);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync();
    }

    public async ValueTask DisposeAsync()
    {
        await ToolAsync("pg_ctl", "stop", "-w", "-D", Files, "-m", "immediate");
        Directory.Delete(folder, recursive: true);
    }

    private string AddressOf(string database) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port};Database={database};Username={Account}");

    private static int FreePort()
    {
        using var door = new System.Net.Sockets.TcpListener(System.Net.IPAddress.Loopback, 0);
        door.Start();
        return ((System.Net.IPEndPoint)door.LocalEndpoint).Port;
    }

    private static Task ToolAsync(string program, params string[] arguments)
    {
        const string packages = "/usr/lib/postgresql";
        var path = Directory.Exists(packages)
            ? Directory.GetDirectories(packages).Select(d => Path.Combine(d, "bin", program)).Where(File.Exists).Max(StringComparer.Ordinal)
            : null;
        path ??= program;
        return Environment.UserName == "root" ? RunAsync("runuser", ["-u", Account, "--", path, .. arguments]) : RunAsync(path, arguments);
    }

    private static async Task RunAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program) { WorkingDirectory = "/" };
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        await process.WaitForExitAsync();
        if (process.ExitCode != 0)
            throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} failed");
    }
}
