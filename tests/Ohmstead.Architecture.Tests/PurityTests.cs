using ArchUnitNET.Domain.Dependencies;
using ArchUnitNET.Loader;

namespace Ohmstead.Architecture.Tests;

/// <summary>Electrical and Workshop compute: they read no file, open no connection, ask no clock. The analyzer refuses the same at
/// build time; this sees what the compiler really wrote.</summary>
public class PurityTests
{
    private static readonly string[] ForbiddenTypes =
    [
        "System.IO.File",
        "System.IO.FileInfo",
        "System.IO.FileStream",
        "System.IO.Directory",
        "System.IO.DirectoryInfo",
        "System.Console",
        "System.Diagnostics.Stopwatch",
        "System.Diagnostics.Process",
    ];

    private static readonly string[] ForbiddenMembers =
    [
        "System.DateTime::get_Now",
        "System.DateTime::get_UtcNow",
        "System.DateTime::get_Today",
        "System.DateTimeOffset::get_Now",
        "System.DateTimeOffset::get_UtcNow",
        "System.TimeProvider::get_System",
        "System.Environment::get_TickCount",
        "System.Environment::get_TickCount64",
        "System.Guid::NewGuid",
        "System.Random::get_Shared",
        "System.Random::.ctor()",
        "System.Threading.Thread::Sleep",
    ];

    [Fact]
    public void Electrical_has_no_input_output_clock_or_chance_of_its_own() => Findings.None(Impurities(Repository.Electrical));

    [Fact]
    public void Workshop_has_no_input_output_clock_or_chance_of_its_own() => Findings.None(Impurities(Repository.Workshop));

    /// <summary>The rule sees what it forbids: storage lives by files, and ids begin at the bench.</summary>
    [Fact]
    public void Where_it_is_allowed_it_is_found()
    {
        Assert.Contains(Impurities(Repository.Storage), found => found.EndsWith(" uses System.IO.File", StringComparison.Ordinal));
        Assert.Contains(Impurities(Repository.App), found => found.EndsWith("System.Guid::NewGuid()", StringComparison.Ordinal));
    }

    /// <summary>
    /// A circuit is typed records; JSON is for reading it and for writing back what is not known, and that is the core's. The verbs
    /// print JSON: there the rule sees what it forbids.
    /// </summary>
    [Fact]
    public void Workshop_takes_no_circuit_apart_as_json()
    {
        Assert.Contains("Ohmstead.App.Commands.DiagnosisJson", UsersOfJson(Repository.App));
        Findings.None(UsersOfJson(Repository.Workshop));
    }

    private static string[] UsersOfJson(System.Reflection.Assembly project) =>
        [
            .. new ArchLoader()
                .LoadAssemblies(project)
                .Build()
                .Types.SelectMany(type => type.Dependencies)
                .Where(d => d.Target.FullName.StartsWith("System.Text.Json.Nodes.", StringComparison.Ordinal))
                // What the compiler makes for a lambda is a part of the type in which it is written.
                .Select(d => d.Origin.FullName.Split('+', '/')[0])
                .Distinct()
                .Order(StringComparer.Ordinal),
        ];

    private static SortedSet<string> Impurities(System.Reflection.Assembly project)
    {
        var built = new ArchLoader().LoadAssemblies(project).Build();
        var found = new SortedSet<string>(StringComparer.Ordinal);
        foreach (var dependency in built.Types.SelectMany(type => type.Dependencies))
        {
            string target = dependency.Target.FullName;
            if (ForbiddenTypes.Contains(target) || target.StartsWith("System.Net.", StringComparison.Ordinal))
            {
                found.Add($"{dependency.Origin.FullName} uses {target}");
            }
            if (dependency is MethodCallDependency call && IsForbidden(call.TargetMember.FullName))
            {
                found.Add($"{dependency.Origin.FullName} calls {call.TargetMember.FullName}");
            }
        }
        return found;
    }

    // Full names look like "System.DateTime System.DateTime::get_Now()".
    private static bool IsForbidden(string member) =>
        Array.Exists(ForbiddenMembers, part => member.Contains(" " + part, StringComparison.Ordinal));
}
