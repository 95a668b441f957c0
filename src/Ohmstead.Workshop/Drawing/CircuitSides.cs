using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// A circuit cut in two along its cores: what hangs together with the mains, and the rest. Leakage paths from one side to
/// the other, or to the iron, belong to neither and are drawn across.
/// </summary>
internal sealed class CircuitSides
{
    private readonly TypeSheet _sheet;
    private readonly Dictionary<string, string> _parent = new(StringComparer.Ordinal);
    private readonly HashSet<string> _mains;

    public CircuitSides(TypeSheet sheet)
    {
        _sheet = sheet;
        Outer = OuterTerminals(sheet).ToHashSet(StringComparer.Ordinal);
        Iron = FindIron(sheet);
        foreach (var e in sheet.Elements.Where(e => e.Kind != ElementKind.Insulation))
        foreach (var t in e.OtherTerminals.Append(e.To))
            Join(e.From, t);
        foreach (var e in Paths.Where(e => e.From != Iron && e.To != Iron))
        {
            Root(e.From);
            Root(e.To);
        }
        _mains = MainsTerminals(sheet).Select(Root).ToHashSet(StringComparer.Ordinal);
        Bridges = [.. Paths.Where(e => e.From == Iron || e.To == Iron || IsMains(e.From) != IsMains(e.To))];
        Mains = SideOf(isMains: true);
        Posts = SideOf(isMains: false);
    }

    /// <summary>The leakage paths of the sheet.</summary>
    private IEnumerable<Element> Paths => _sheet.Elements.Where(e => e.Kind == ElementKind.Insulation);

    /// <summary>Terminals that can be reached with the case closed: blades and posts.</summary>
    public IReadOnlySet<string> Outer { get; }

    /// <summary>The terminal that only leakage paths lead to, or nothing: the iron of the core.</summary>
    public string? Iron { get; }

    /// <summary>Leakage paths across the core or to its iron.</summary>
    public IReadOnlyList<Element> Bridges { get; }

    /// <summary>Elements that hang together with the mains.</summary>
    public IReadOnlyList<Element> Mains { get; }

    /// <summary>All others.</summary>
    public IReadOnlyList<Element> Posts { get; }

    /// <summary>True when the terminal hangs together with the mains.</summary>
    public bool IsMains(string terminal) => _mains.Contains(Root(terminal));

    private List<Element> SideOf(bool isMains) => [.. _sheet.Elements.Where(e => !Bridges.Contains(e) && IsMains(e.From) == isMains)];

    private static IEnumerable<string> OuterTerminals(TypeSheet sheet) =>
        sheet
            .Readings.Where(r => !r.IsOpenCase)
            .SelectMany(r =>
                new[] { r.From, r.To, r.State.Source?.From ?? "", r.State.Source?.To ?? "" }.Concat(
                    r.State.Loads.SelectMany(l => new[] { l.From, l.To })
                )
            );

    /// <summary>Where the readings put the mains; without such a reading, the reference winding of the first core.</summary>
    private static IEnumerable<string> MainsTerminals(TypeSheet sheet)
    {
        var fed = sheet
            .Readings.Select(r => r.State.Source)
            .OfType<SourceSpec>()
            .Where(s => !s.IsDirect && s.Volts >= sheet.SupplyVolts / 2)
            .SelectMany(s => new[] { s.From, s.To })
            .Where(t => sheet.Elements.Any(e => e.From == t || e.To == t))
            .ToList();
        if (fed.Count > 0)
            return fed;
        return sheet.Windings.Where(w => sheet.Cores.Any(c => c.ReferenceWinding == w.Id)).Select(w => w.From);
    }

    private static string? FindIron(TypeSheet sheet)
    {
        var ends = sheet
            .Elements.SelectMany(e =>
                e.OtherTerminals.Append(e.From).Append(e.To).Select(t => (Terminal: t, IsPath: e.Kind == ElementKind.Insulation))
            )
            .GroupBy(e => e.Terminal, StringComparer.Ordinal)
            .Where(g => g.All(e => e.IsPath) && !sheet.Elements.Any(e => e.From == g.Key && e.To == g.Key))
            .ToList();
        return ends.Count == 0 ? null : ends.MaxBy(g => g.Count())!.Key;
    }

    private void Join(string a, string b)
    {
        var (x, y) = (Root(a), Root(b));
        if (x != y)
            _parent[y] = x;
    }

    private string Root(string terminal)
    {
        var at = terminal;
        while (_parent.TryGetValue(at, out var up))
            at = up;
        return at;
    }
}
