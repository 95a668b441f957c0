using System.CommandLine;

namespace Ohmstead.App.Commands;

/// <summary>Where the workshop is kept, unless told otherwise.</summary>
internal static class DataFolder
{
    public static Option<string?> Option() => new("--data") { Description = "Where the workshop is saved.", HelpName = "FOLDER" };

    public static string Usual() =>
        Path.Combine(
            Environment.GetFolderPath(Environment.SpecialFolder.LocalApplicationData, Environment.SpecialFolderOption.Create),
            "ohmstead"
        );
}
