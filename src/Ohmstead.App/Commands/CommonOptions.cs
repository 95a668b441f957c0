using System.CommandLine;

namespace Ohmstead.App.Commands;

/// <summary>Arguments and options that several verbs share.</summary>
internal static class CommonOptions
{
    public static Argument<string> Sheet() =>
        new("SHEET") { Description = "The type sheet: what this type of unit is (JSON). An outline will do." };

    public static Option<string?> Unit() =>
        new("--unit") { Description = "How this unit differs from its sheet (JSON).", HelpName = "FILE" };

    public static Option<bool> Json() => new("--json") { Description = "Print one JSON object and nothing else." };
}
