using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Wiring;

/// <summary>The wiring of a unit in one state, joint by joint.</summary>
/// <param name="Joints">What was seen last of each joint, in the order of the sheet.</param>
/// <param name="IsFrozen">True when it is closed.</param>
public sealed record WiringRecord(WiringState As, ImmutableArray<JointSeen> Joints, bool IsFrozen)
{
    /// <summary>Reads the journal.</summary>
    public static WiringRecord Of(BenchUnit unit, TypeSheet sheet, WiringState state)
    {
        var order = WireEnds.Terminals(sheet);
        var joints = unit.All<JointSeen>().Where(j => j.Fact.As == state).GroupBy(j => j.Fact.Terminal).Select(g => g.Last()).ToList();
        var last = new Dictionary<string, EndSeen>(StringComparer.Ordinal);
        foreach (var (entry, joint) in joints.OrderBy(j => j.Entry.Number))
        foreach (var end in joint.Ends)
            last[end.Id] = new(joint.Terminal, entry.Number);
        return new(
            state,
            [.. joints.Select(j => j.Fact).OrderBy(j => order.IndexOf(j.Terminal))],
            unit.All<WiringFrozen>().Any(f => f.Fact.As == state)
        )
        {
            Seen = last.ToImmutableDictionary(StringComparer.Ordinal),
        };
    }

    /// <summary>Where each end was seen last: one that was moved back and seen there is no longer where it was before.</summary>
    public ImmutableDictionary<string, EndSeen> Seen { get; private init; } = ImmutableDictionary<string, EndSeen>.Empty;

    /// <summary>The terminal of a wire end; null while it was not seen.</summary>
    public string? TerminalOf(string end) => Seen.GetValueOrDefault(end)?.Terminal;

    /// <summary>The colour of a wire end as seen here; empty when none was said.</summary>
    public string ColourOf(string end) => Joints.SelectMany(j => j.Ends).FirstOrDefault(e => e.Id == end)?.Colour ?? "";

    /// <summary>The colour of the wire of an end, as seen at either of its ends here; empty when none was said.</summary>
    public string ColourOfWire(string end)
    {
        var wire = end[..(end.LastIndexOf('.') + 1)];
        return Joints
                .SelectMany(j => j.Ends)
                .FirstOrDefault(e => e.Colour.Length > 0 && e.Id.StartsWith(wire, StringComparison.Ordinal))
                ?.Colour
            ?? "";
    }

    /// <summary>Terminals whose joints were not looked at, and the one in hand, in the order of the sheet.</summary>
    public IEnumerable<string> Waiting(TypeSheet sheet, string inHand) =>
        WireEnds.Terminals(sheet).Where(t => t == inHand || !Joints.Any(j => j.Terminal == t));

    /// <summary>Wire ends that were seen on no joint, in the order of the sheet.</summary>
    public IEnumerable<string> NotSeen(TypeSheet sheet) => WireEnds.Of(sheet).Select(e => e.End).Where(e => TerminalOf(e) is null);

    /// <summary>What is missing or cannot be, in words: an end not seen, an end on two joints, a joint without a wire or without a photo.</summary>
    public ImmutableArray<string> Incomplete(TypeSheet sheet)
    {
        var problems = ImmutableArray.CreateBuilder<string>();
        var seen = Joints
            .SelectMany(j => j.Ends.Select(e => (e.Id, j.Terminal)))
            .ToLookup(p => p.Id, p => p.Terminal, StringComparer.Ordinal);
        foreach (var element in WireEnds.Of(sheet).GroupBy(e => e.End[..e.End.LastIndexOf('.')]))
        {
            var missing = element.Where(e => !seen.Contains(e.End)).ToList();
            if (missing.Count > 0 && missing.Count < element.Count())
                problems.Add(
                    $"{Sentences.Large(PartNames.Of(sheet, element.Key))} has an end not seen: {string.Join(", ", missing.Select(m => PartNames.EndAlone(sheet, m.End)))}"
                );
        }
        foreach (var twice in seen.Where(s => s.Count() > 1))
            problems.Add(
                $"{WireEnds.Said(twice.Key, sheet)} is on two joints: {string.Join(" and ", twice.Select(t => PartNames.Terminal(sheet, t)))}"
            );
        foreach (var terminal in Waiting(sheet, ""))
            problems.Add($"{Sentences.Large(PartNames.Terminal(sheet, terminal))}: not looked at");
        foreach (var joint in Joints.Where(j => j.Ends.IsEmpty))
            problems.Add($"{Sentences.Large(PartNames.Terminal(sheet, joint.Terminal))}: no wire");
        foreach (var joint in Joints.Where(j => j.Photo.Length == 0))
            problems.Add($"{Sentences.Large(PartNames.Terminal(sheet, joint.Terminal))}: on no photo");
        return problems.ToImmutable();
    }

    /// <summary>Ends that were seen elsewhere than a circuit has them.</summary>
    public ImmutableArray<(string End, string Seen, string Planned)> Against(TypeSheet circuit) =>
        [
            .. WireEnds
                .Of(circuit)
                .Select(e => (e.End, Seen: TerminalOf(e.End) ?? "", e.Terminal))
                .Where(d => d.Seen.Length > 0 && d.Seen != d.Terminal),
        ];
}

/// <summary>Where a wire end was seen, and the number of the entry that says so.</summary>
public sealed record EndSeen(string Terminal, int Number);

/// <summary>One wire end in the three wirings.</summary>
/// <param name="Found">Its terminal as found; empty when not seen.</param>
/// <param name="Planned">As planned for this unit.</param>
/// <param name="Left">As left; empty when not seen.</param>
public sealed record EndCompared(string End, string Found, string Planned, string Left)
{
    /// <summary>True when it was left otherwise than planned.</summary>
    public bool IsWrong => Left.Length > 0 && Left != Planned;

    /// <summary>True when it was moved, and as planned.</summary>
    public bool IsIntended => Left == Planned && Found.Length > 0 && Found != Left;

    /// <summary>Every end of the planned circuit.</summary>
    public static ImmutableArray<EndCompared> All(WiringRecord found, WiringRecord left, TypeSheet own) =>
        [.. WireEnds.Of(own).Select(e => new EndCompared(e.End, found.TerminalOf(e.End) ?? "", e.Terminal, left.TerminalOf(e.End) ?? ""))];
}
