using System.Text.Json.Nodes;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>An outline, the type that stands behind it and that the method never sees, and units of it.</summary>
/// <param name="Name">Of its file.</param>
/// <param name="Kind">What can be seen.</param>
/// <param name="True">The sheet of the type as it was designed.</param>
/// <param name="Faulty">Where the units with faults are.</param>
/// <param name="Sound">Where the sound ones are.</param>
internal sealed record TrialType(string Name, OutlineKind Kind, TypeSheet True, string Faulty, string Sound)
{
    /// <summary>Sound units of each type: some that a sheet is drafted from besides, and some that it is held to.</summary>
    public const int SoundUnits = 15;

    /// <summary>The outlines, no two of one circuit. Nothing was tuned on them.</summary>
    public static readonly string[] Names = ["knob-75", "pair-250", "wire-40", "shoes-180"];

    private const double UsualFaults = 2;

    /// <param name="folder">Where units are kept.</param>
    /// <param name="units">How many units with faults; those that are not there yet are made.</param>
    public static TrialType Of(string root, string folder, string name, int units)
    {
        var text = File.ReadAllText(Path.Combine(root, $"perf/Ohmstead.Perf/Experiments/Drafted/Types/{name}.outline.json"));
        var kind = OutlineFile.Read(text).Required.Kinds.Single();
        var seed = SeedOf(name);
        var type = new TrialType(
            name,
            kind,
            DesignedType.Of(kind, seed),
            Path.Combine(folder, name, "faulty"),
            Path.Combine(folder, name, "sound")
        );
        SimulatedUnits.Make(root, type.True, type.Faulty, Math.Max(units, DraftedTrial.Drafts), seed, UsualFaults);
        SimulatedUnits.Make(root, type.True, type.Sound, SoundUnits, seed + 1, 0);
        return type;
    }

    /// <summary>Another type that looks the same: the same plate, posts and levers, designed by someone else.</summary>
    public TypeSheet LookAlike(int n) =>
        DesignedType.Of(Kind, SeedOf(Name) + (1000 * n)) with
        {
            Id = FormattableString.Invariant($"{Name}-{n}"),
        };

    /// <summary>The readings of a unit with faults, as text.</summary>
    public string FaultyReadings(int n) => File.ReadAllText(SimulatedUnits.ReadingsOf(Faulty, n));

    /// <summary>The readings of a sound unit, as text.</summary>
    public string SoundReadings(int n) => File.ReadAllText(SimulatedUnits.ReadingsOf(Sound, n));

    /// <summary>What is wrong with a unit.</summary>
    public HashSet<string> Truth(int n) =>
        [
            .. JsonNode
                .Parse(File.ReadAllText(SimulatedUnits.ReadingsOf(Faulty, n).Replace(".readings.", ".truth.", StringComparison.Ordinal)))!
                .AsArray()
                .Select(t => $"{(string)t!["element"]!}:{(string)t["mode"]!}"),
        ];

    private static int SeedOf(string name) => 7 + (13 * Array.IndexOf(Names, name));
}
