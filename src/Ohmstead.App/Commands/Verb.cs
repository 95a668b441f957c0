using System.CommandLine;

namespace Ohmstead.App.Commands;

/// <summary>A verb of the command line.</summary>
/// <param name="concernsMains">What it prints leads to work on mains: local codes are named below it.</param>
/// <param name="examples">Shown by its help.</param>
internal sealed class Verb(string name, string description, bool concernsMains, params string[] examples) : Command(name, description)
{
    public IReadOnlyList<string> Examples { get; } = examples;

    public bool ConcernsMains { get; } = concernsMains;
}
