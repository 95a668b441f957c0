using System.Data.Common;
using Npgsql;

namespace Ohmstead.Storage.Databases;

/// <summary>Where a PostgreSQL database is, who asks, and how long is waited for it.</summary>
/// <param name="Text">What a connection is opened with. It may hold a password that came from the environment: never shown, never written down.</param>
/// <param name="Name">The database as a person is told of it.</param>
/// <param name="Program">Marks what this program writes, so that it need not be told of it.</param>
internal sealed record PostgresAddress(string Text, string Name, string Program)
{
    // An entry is on the server's disk before it counts, whatever the server is set to. A program that vanished in the middle of writing
    // holds the others up no longer than this [ms].
    private const string Sessions = "-c synchronous_commit=on -c idle_in_transaction_session_timeout=5000 -c client_min_messages=warning";

    /// <summary>Reads what a person wrote.</summary>
    /// <param name="written">Host=…;Database=…;Username=…, as Npgsql has it.</param>
    /// <param name="program">Another one for every program.</param>
    /// <exception cref="StoreUnusable">It names no database.</exception>
    public static PostgresAddress Read(string written, Guid program)
    {
        var said = Said(written);
        // A bench asks little at a time, and twenty of them must fit into the hundred connections that a server usually has.
        Usually(said, "Maximum Pool Size", "4");
        Usually(said, "Timeout", "4");
        Usually(said, "Command Timeout", "15");
        Usually(said, "Options", Sessions);
        try
        {
            var builder = new NpgsqlConnectionStringBuilder(said.ConnectionString) { ApplicationName = $"ohmstead-{program:N}" };
            if (string.IsNullOrEmpty(builder.Host) || string.IsNullOrEmpty(builder.Database))
                throw new StoreUnusable(Unclear);
            return new(builder.ConnectionString, $"the database {builder.Database} on {builder.Host}", builder.ApplicationName);
        }
        catch (Exception wrong) when (wrong is ArgumentException or FormatException or NotSupportedException)
        {
            throw new StoreUnusable(Unclear, wrong);
        }
    }

    /// <summary>True when a password stands in it.</summary>
    /// <exception cref="StoreUnusable">It names no database.</exception>
    public static bool HasPassword(string written) =>
        Said(written).Keys.Cast<string>().Any(k => Secrets.Contains(k.Replace(" ", "", StringComparison.Ordinal)));

    private static readonly HashSet<string> Secrets = new(["Password", "PWD", "PSW", "SslPassword"], StringComparer.OrdinalIgnoreCase);

    private const string Unclear =
        "The address of the database is not understood. Write it like this: --database \"Host=HOST;Database=NAME;Username=YOU\"";

    private static DbConnectionStringBuilder Said(string written)
    {
        try
        {
            return new DbConnectionStringBuilder { ConnectionString = written };
        }
        catch (ArgumentException wrong)
        {
            throw new StoreUnusable(Unclear, wrong);
        }
    }

    private static void Usually(DbConnectionStringBuilder said, string what, string value)
    {
        if (!said.ContainsKey(what) && !said.ContainsKey(what.Replace(" ", "", StringComparison.Ordinal)))
            said[what] = value;
    }
}
