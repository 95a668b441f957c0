using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Untyped;

/// <summary>A wire of a unit whose type is not known, as far as its joints were recorded.</summary>
/// <param name="Id">"untyped-wire-3": made when the first of its ends was seen.</param>
/// <param name="Colour">As seen; may be empty.</param>
/// <param name="From">The terminal of the end that was seen first.</param>
/// <param name="To">The terminal of the other end; empty while it was not seen.</param>
public sealed record SeenWire(string Id, string Colour, string From, string To)
{
    private const string Start = UntypedIds.Prefix + "wire-";

    /// <summary>The end that was seen first.</summary>
    public string First => $"{Id}.from";

    /// <summary>The other end.</summary>
    public string Second => $"{Id}.to";

    /// <summary>True while one of its ends was not seen.</summary>
    public bool IsLoose => From.Length == 0 || To.Length == 0;

    /// <summary>The terminal of its other end; empty while that was not seen.</summary>
    public string Beyond(string end) => end == First ? To : From;

    /// <summary>"red wire", "wire".</summary>
    public string Name => Colour.Length > 0 ? $"{Colour} wire" : "wire";

    /// <summary>Every wire, as found where it was recorded so, else as left; in the order of their numbers.</summary>
    public static ImmutableArray<SeenWire> All(BenchUnit unit)
    {
        var wires = new SortedDictionary<int, SeenWire>();
        foreach (var joint in Joints(unit, WiringState.Left).Concat(Joints(unit, WiringState.Found)))
        foreach (var end in joint.Ends.Where(e => NumberOf(e.Id) > 0))
        {
            var dot = end.Id.LastIndexOf('.');
            var wire = wires.GetValueOrDefault(NumberOf(end.Id)) ?? new SeenWire(end.Id[..dot], "", "", "");
            wire = end.Id.EndsWith(".from", StringComparison.Ordinal)
                ? wire with
                {
                    From = joint.Terminal,
                }
                : wire with
                {
                    To = joint.Terminal,
                };
            wires[NumberOf(end.Id)] = end.Colour.Length > 0 ? wire with { Colour = end.Colour } : wire;
        }
        return [.. wires.Values];
    }

    /// <summary>What was seen last of each joint.</summary>
    public static IEnumerable<JointSeen> Joints(BenchUnit unit, WiringState state) =>
        unit.All<JointSeen>()
            .Select(j => j.Fact)
            .Where(j => j.As == state)
            .GroupBy(j => j.Terminal, StringComparer.Ordinal)
            .Select(g => g.Last());

    /// <summary>
    /// The ends that may sit on a terminal: those recorded there, those of the record as found there, and every end that is on
    /// no joint of this record yet.
    /// </summary>
    public static ImmutableArray<(string End, SeenWire Wire, bool IsHere)> On(BenchUnit unit, WiringState state, string terminal)
    {
        var joints = Joints(unit, state).ToList();
        var here =
            (joints.Find(j => j.Terminal == terminal) ?? Joints(unit, WiringState.Found).FirstOrDefault(j => j.Terminal == terminal))?.Ends
            ?? [];
        var elsewhere = joints
            .Where(j => j.Terminal != terminal)
            .SelectMany(j => j.Ends)
            .Select(e => e.Id)
            .ToHashSet(StringComparer.Ordinal);
        return
        [
            .. All(unit)
                .SelectMany(w => new[] { (End: w.First, Wire: w), (End: w.Second, Wire: w) })
                .Where(e => !elsewhere.Contains(e.End))
                .Select(e => (e.End, e.Wire, here.Any(h => h.Id == e.End))),
        ];
    }

    /// <summary>A joint as it was seen: ends of known wires, and new wires by their colors, "red, black" is two.</summary>
    public static JointSeen Seen(BenchUnit unit, WiringState state, string terminal, IReadOnlyCollection<string> ends, string fresh)
    {
        var known = All(unit);
        var next = unit.All<JointSeen>().SelectMany(j => j.Fact.Ends).Select(e => NumberOf(e.Id)).DefaultIfEmpty(0).Max();
        var made = fresh
            .Split([',', ';', '\n'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(c => c.EndsWith(" wire", StringComparison.OrdinalIgnoreCase) ? c[..^5] : c)
            .Select(c => new WireEnd(string.Create(CultureInfo.InvariantCulture, $"{Start}{++next}.from"), c.Length <= 40 ? c : c[..40]));
        var kept = ends.Select(e => new WireEnd(e, known.FirstOrDefault(w => e == w.First || e == w.Second)?.Colour ?? ""));
        return new JointSeen(state, terminal, [.. kept, .. made], "", 0, 0);
    }

    private static int NumberOf(string end)
    {
        var dot = end.LastIndexOf('.');
        return
            dot > Start.Length
            && end.StartsWith(Start, StringComparison.Ordinal)
            && int.TryParse(end.AsSpan(Start.Length, dot - Start.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var n)
            ? n
            : 0;
    }
}
