using System.Collections.Immutable;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>All single mistakes that a rewire of a unit can make, with their chances (common practice, no source).</summary>
public static class MistakeList
{
    private const double BridgeOhms = 0.1;
    private const double BypassOhms = 1e-3;

    /// <summary>A cold joint, spread evenly over the logarithm from 0.4 to 30 Ω.</summary>
    private static readonly ImmutableArray<double> ColdOhms = [0.4, 1.2, 3.5, 10, 30];

    /// <summary>
    /// The mistakes of a sheet. An exchange of ends that leaves the same circuit is none; chances that a kind of mistake shares
    /// are shared over those that are left.
    /// </summary>
    /// <param name="chances">Chances in one rewire; null for those of the trade.</param>
    public static ImmutableArray<Mistake> Of(TypeSheet sheet, RewireChances? chances = null)
    {
        var c = chances ?? RewireChances.Usual;
        var wires = sheet.Elements.Where(e => e.Kind == ElementKind.Wire).ToList();
        var ends = wires.SelectMany(w => (string[])[$"{w.Id}.from", $"{w.Id}.to"]).ToList();
        return
        [
            .. Shared(c.SwapPercent, Swaps(sheet, wires, ends), [0]),
            .. Shared(c.MovedPercent, Moves(sheet, wires), [0]),
            .. Shared(c.BridgePercent, Bridges(sheet), [BridgeOhms]),
            .. wires.Select(w => new Mistake($"off:{w.Id}", c.OffPercent, [BranchValues.OpenOhms])),
            .. sheet.Elements.Where(CanBeReversed).Select(e => new Mistake($"reversed:{e.Id}", c.ReversedPercent, [0])),
            .. sheet
                .Elements.Where(e => e.Kind.CanBeBypassed())
                .Select(e => new Mistake($"bypassed:{e.Id}", c.BypassedPercent, [BypassOhms])),
            .. sheet
                .Elements.Where(e => e.Kind is ElementKind.Joint or ElementKind.Wire)
                .Select(e => new Mistake($"cold:{e.Id}", c.ColdPercent, ColdOhms)),
        ];
    }

    private static bool CanBeReversed(Element e) => e is Rectifier or Winding { Taps.Length: 0, Sliders.Length: 0 };

    private static IEnumerable<Mistake> Shared(double percent, IEnumerable<string> ids, ImmutableArray<double> sizes)
    {
        var all = ids.ToList();
        return all.Select(id => new Mistake(id, percent / all.Count, sizes));
    }

    private static IEnumerable<string> Swaps(TypeSheet sheet, List<Element> wires, List<string> ends)
    {
        var usual = Likeness(sheet);
        for (var a = 0; a < ends.Count; a++)
        for (var b = a + 1; b < ends.Count; b++)
        {
            if (a / 2 == b / 2)
                continue;
            var swap = new Mistake($"swap:{ends[a]}~{ends[b]}", 1, [0]);
            if (Likeness(swap.Make(sheet, 0)) != usual)
                yield return swap.Id;
        }
    }

    private static IEnumerable<string> Moves(TypeSheet sheet, List<Element> wires) =>
        from w in wires
        from end in ((string Name, string At)[])[($"{w.Id}.from", w.From), ($"{w.Id}.to", w.To)]
        from near in sheet.Near
        where near.Contains(end.At)
        from to in near
        where to != end.At && to != w.From && to != w.To
        select $"moved:{end.Name}>{to}";

    private static IEnumerable<string> Bridges(TypeSheet sheet) =>
        from near in sheet.Near
        from a in Enumerable.Range(0, near.Length)
        from b in Enumerable.Range(a + 1, near.Length - a - 1)
        select $"bridge:{near[a]}~{near[b]}";

    /// <summary>The circuit as text in which the names of wires do not count, nor which of a wire's ends is which.</summary>
    private static string Likeness(TypeSheet sheet) =>
        string.Join(
            ';',
            sheet
                .Elements.Where(e => e.Kind == ElementKind.Wire)
                .Select(w => string.CompareOrdinal(w.From, w.To) < 0 ? $"{w.From}-{w.To}" : $"{w.To}-{w.From}")
                .Order(StringComparer.Ordinal)
        );
}
