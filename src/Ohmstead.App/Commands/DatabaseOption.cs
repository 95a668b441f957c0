using System.CommandLine;
using Ohmstead.Storage;

namespace Ohmstead.App.Commands;

/// <summary>Where the workshop is, when it may be in a database that several benches share.</summary>
internal static class DatabaseOption
{
    public static Option<string?> Make() =>
        new("--database")
        {
            Description = $"The PostgreSQL database that your club shares. \"{WorkshopPlace.None}\" is the folder.",
            HelpName = "ADDRESS",
        };

    /// <summary>The command line goes before the environment, the environment before the setting in the data folder.</summary>
    public static WorkshopPlace Place(ParseResult parsed, Option<string?> folder, Option<string?> database) =>
        WorkshopPlace.Find(
            parsed.GetValue(folder) ?? DataFolder.Usual(),
            parsed.GetValue(database),
            Environment.GetEnvironmentVariable(WorkshopPlace.Variable)
        );
}
