using System.CommandLine;

namespace Ohmstead.App.Commands;

/// <summary>A verb of the command line, with the examples that its help shows.</summary>
internal sealed class Verb(string name, string description, params string[] examples) : Command(name, description)
{
    public IReadOnlyList<string> Examples { get; } = examples;

    /// <summary>True where what it prints leads to work on mains: local codes are named below it.</summary>
    public bool ConcernsMains { get; } =
        name is "predict" or "diagnose" or "plan" or "rewire" or "continuity" or "draft" or "identify" or "reckon" or "example";
}
