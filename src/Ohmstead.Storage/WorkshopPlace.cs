using Ohmstead.Storage.Databases;

namespace Ohmstead.Storage;

/// <summary>Where a workshop is: in a data folder, or in a database that several programs share.</summary>
/// <param name="Folder">The data folder of this machine.</param>
/// <param name="Database">The address of the database; null where the workshop is in the folder.</param>
public sealed record WorkshopPlace(string Folder, string? Database)
{
    /// <summary>The file of the data folder that may name a database.</summary>
    public const string Setting = "database.txt";

    /// <summary>The environment variable that may name one.</summary>
    public const string Variable = "OHMSTEAD_DATABASE";

    /// <summary>Says that the workshop is in the folder, whatever the environment or the setting says.</summary>
    public const string None = "none";

    private const string WhereElse =
        "Put it into the file .pgpass of this account (HOST:PORT:DATABASE:ACCOUNT:PASSWORD), or into the environment variable PGPASSWORD";

    /// <summary>What was asked for goes before the environment, the environment before the setting in the folder; else it is the folder.</summary>
    /// <param name="folder">The data folder.</param>
    /// <param name="asked">What the command line names; null for nothing.</param>
    /// <param name="environment">What the environment names; null for nothing.</param>
    /// <exception cref="StoreUnusable">An address is not understood, or a password stands where others can read it.</exception>
    public static WorkshopPlace Find(string folder, string? asked, string? environment)
    {
        if (asked is not null)
            return new(folder, Checked(asked, "--database"));
        // A password in the environment is as safe as PGPASSWORD is: it is the person's own choice.
        if (!string.IsNullOrWhiteSpace(environment))
            return new(folder, environment == None ? null : environment);
        var setting = Path.Combine(folder, Setting);
        var lines = File.Exists(setting) ? File.ReadAllLines(setting) : [];
        return lines.Select(l => l.Trim()).FirstOrDefault(l => l.Length > 0 && l[0] != '#') is { } named
            ? new(folder, Checked(named, setting))
            : new(folder, null);
    }

    /// <summary>Writes into the data folder that its workshop is in the database from now on.</summary>
    /// <exception cref="StoreUnusable">A password stands in the address.</exception>
    public void Remember() =>
        File.WriteAllText(
            Path.Combine(Directory.CreateDirectory(Folder).FullName, Setting),
            $"# The workshop is in this database. Without this file it is in this folder.\n{Checked(Database ?? None, Setting)}\n"
        );

    /// <summary>Says before anything else is done that <see cref="Remember"/> would refuse.</summary>
    /// <exception cref="StoreUnusable">A password stands in the address.</exception>
    public void CheckCanBeRemembered() => Checked(Database ?? None, Setting);

    /// <summary>Opens the workshop, or begins one.</summary>
    /// <param name="program">Another id for every program.</param>
    /// <exception cref="StoreUnusable">It cannot be used.</exception>
    public Task<Store> OpenAsync(TimeProvider time, Guid program, CancellationToken cancel) =>
        Database is { } address ? Store.OpenSharedAsync(address, Folder, program, cancel) : Store.OpenAsync(Folder, time, cancel);

    /// <summary>Opens the workshop that is there.</summary>
    /// <exception cref="StoreUnusable">As above, or the folder holds none.</exception>
    public Task<Store> OpenFoundAsync(TimeProvider time, Guid program, CancellationToken cancel) =>
        Database is { } address ? Store.OpenSharedAsync(address, Folder, program, cancel) : Store.OpenFoundAsync(Folder, time, cancel);

    /// <summary>The place as a person is told of it; never the address, which may hold a password.</summary>
    public override string ToString() => Database is { } address ? PostgresAddress.Read(address, Guid.Empty).Name : Folder;

    private static string? Checked(string address, string where)
    {
        if (address == None)
            return null;
        if (PostgresAddress.HasPassword(address))
            throw new StoreUnusable($"{where}: no password here, others can read it. {WhereElse}");
        PostgresAddress.Read(address, Guid.Empty);
        return address;
    }
}
