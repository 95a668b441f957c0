using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>All fault modes of a sheet, in sheet order, with their chances before any reading.</summary>
public sealed class FaultCatalogue
{
    private readonly Dictionary<string, FaultMode> byName;
    private readonly ImmutableArray<FaultMode> shared;

    /// <summary>Lists the modes of a sheet.</summary>
    public FaultCatalogue(UnitModel model)
    {
        var all = ImmutableArray.CreateBuilder<FaultMode>();
        var sliderAt = 0;
        for (var n = 0; n < model.Sheet.Elements.Length; n++)
        {
            var e = model.Sheet.Elements[n];
            foreach (var spec in e.Kind.Faults())
                all.Add(new(all.Count, e.Id, n, e.Kind, OnSheet(OfPart(spec, e), e.Percents, (e as Winding)?.Turns ?? 0)));
            if (e is not Winding w)
                continue;
            foreach (var s in w.Sliders)
            {
                foreach (var spec in ElementKind.Slider.Faults())
                    all.Add(new(all.Count, s.Id, sliderAt, ElementKind.Slider, OnSheet(spec, s.Percents, 0)));
                sliderAt++;
            }
        }
        AddShared(model.Sheet, all);
        Modes = all.ToImmutable();
        byName = Modes.ToDictionary(m => m.Name, StringComparer.Ordinal);
        shared = [.. Modes.Where(m => m.IsShared)];
        ElementOf = Groups(Modes, out var count);
        ElementCount = count;
    }

    /// <summary>A fault that parts share: what it does to each of them, with a size that all of them can have.</summary>
    private static void AddShared(TypeSheet sheet, ImmutableArray<FaultMode>.Builder all)
    {
        if (sheet.SharedFaults.IsEmpty)
            return;
        var elements = Groups(all, out _);
        foreach (var fault in sheet.SharedFaults)
        {
            FaultMode[] own = [.. fault.Elements.Select(e => all.First(m => m.Element == e && m.Mode == fault.Mode))];
            var least = own.Max(m => m.Min);
            var spec = own[0].Spec with { Percent = fault.Percent, Min = least, Max = Math.Max(least, own.Min(m => m.Max)) };
            all.Add(
                new(all.Count, fault.Id, own[0].Target, own[0].Kind, spec)
                {
                    SharedBy = fault.Elements,
                    OtherTargets = [.. own[1..].Select(m => m.Target)],
                    SharedElements = [.. own.Select(m => elements[m.Number])],
                }
            );
        }
    }

    /// <summary>The modes; <see cref="FaultMode.Number"/> is the place.</summary>
    public ImmutableArray<FaultMode> Modes { get; }

    /// <summary>By mode: the number of its element or slider; an element is in one mode at a time.</summary>
    public ImmutableArray<int> ElementOf { get; }

    /// <summary>Elements and sliders that can fail.</summary>
    public int ElementCount { get; }

    /// <summary>The mode named <c>element:mode</c>, or null.</summary>
    public FaultMode? Find(string name) => byName.GetValueOrDefault(name);

    /// <summary>True where two faults cannot be there at once: they are of one part.</summary>
    public bool Clash(FaultMode a, FaultMode b) => Clash(a, b, ElementOf);

    internal static bool Clash(FaultMode a, FaultMode b, ImmutableArray<int> elementOf) =>
        elementOf[a.Number] == elementOf[b.Number]
        || a.SharedElements.Contains(elementOf[b.Number])
        || b.SharedElements.Contains(elementOf[a.Number])
        || a.SharedElements.Any(e => b.SharedElements.Contains(e));

    /// <summary>
    /// Odds of each mode against its element being sound: c·p/(1 − p), with c = 1 or such that the mean number of faults is
    /// <paramref name="expectedFaults"/>. Of a fault that parts share it is against all of them being sound: where it is there, it is
    /// instead of everything else that they could have.
    /// </summary>
    public double[] Odds(double? expectedFaults)
    {
        var odds = Modes.Select(m => m.Percent / (100 - m.Percent)).ToArray();
        var scale = expectedFaults is { } mean ? ScaleTo(mean, odds) : 1;
        for (var n = 0; n < odds.Length; n++)
            odds[n] *= scale;
        if (shared.IsEmpty)
            return odds;
        var sums = PlainSums(odds, Modes);
        foreach (var m in shared)
            odds[m.Number] *= Instead(m, sums);
        return odds;
    }

    /// <summary>The factor on all odds by which the mean number of faults comes out.</summary>
    private double ScaleTo(double mean, double[] odds)
    {
        var sums = new double[ElementCount];
        for (var n = 0; n < odds.Length; n++)
            sums[ElementOf[n]] += odds[n];
        var most = sums.Count(s => s > 0);
        if (most == 0)
            return 1;
        var target = Math.Min(mean, most * 0.999);
        var (low, high) = (Math.Log(1e-12), Math.Log(1e12));
        for (var k = 0; k < 200; k++)
        {
            var c = Math.Exp((low + high) / 2);
            if (MeanAt(c, sums) < target)
                low = Math.Log(c);
            else
                high = Math.Log(c);
        }
        return Math.Exp((low + high) / 2);
    }

    /// <summary>Mean number of faults: the parts that share a fault which is there have no other.</summary>
    private double MeanAt(double c, double[] sums)
    {
        var free = new double[ElementCount];
        Array.Fill(free, 1);
        foreach (var m in shared)
        foreach (var e in m.SharedElements)
            free[e] /= 1 + (c * sums[ElementOf[m.Number]]);
        return sums.Select((s, e) => free[e] * c * s / (1 + (c * s))).Sum();
    }

    /// <summary>
    /// Sums of the odds of some modes by element; those of a fault that parts share as if these could have it beside their own, which is
    /// what makes the sums independent.
    /// </summary>
    internal double[] Sums(double[] odds, IEnumerable<FaultMode> modes)
    {
        var sums = PlainSums(odds, modes);
        if (shared.IsEmpty)
            return sums;
        var all = PlainSums(odds, Modes);
        foreach (var m in modes.Where(m => m.IsShared))
            sums[ElementOf[m.Number]] += odds[m.Number] / Instead(m, all);
        return sums;
    }

    /// <summary>
    /// The odds where some modes are left out of account, for they keep their chances whatever is read: a fault that parts share is not
    /// instead of those, too.
    /// </summary>
    internal double[] OddsWithout(double[] odds, IEnumerable<FaultMode> left)
    {
        if (shared.IsEmpty)
            return odds;
        var (sums, without) = (PlainSums(odds, left), (double[])odds.Clone());
        foreach (var m in shared)
            without[m.Number] /= Instead(m, sums);
        return without;
    }

    private double[] PlainSums(double[] odds, IEnumerable<FaultMode> modes)
    {
        var sums = new double[ElementCount];
        foreach (var m in modes)
            if (!m.IsShared)
                sums[ElementOf[m.Number]] += odds[m.Number];
        return sums;
    }

    private static double Instead(FaultMode fault, double[] sums) => fault.SharedElements.Aggregate(1.0, (p, e) => p * (1 + sums[e]));

    /// <summary>Chance of each mode before any reading, from its odds.</summary>
    public double[] Chances(double[] odds)
    {
        var sums = Sums(odds, Modes);
        var chances = Modes
            .Select(m => (m.IsShared ? sums[ElementOf[m.Number]] : odds[m.Number]) / (1 + sums[ElementOf[m.Number]]))
            .ToArray();
        foreach (var fault in shared)
        foreach (var m in Modes.Where(m => !m.IsShared && fault.SharedElements.Contains(ElementOf[m.Number])))
            chances[m.Number] *= 1 - chances[fault.Number];
        return chances;
    }

    /// <summary>The wire of a resistor with taps or sliders breaks at a place, as a winding does.</summary>
    private static FaultSpec OfPart(FaultSpec spec, Element e) =>
        e is Winding && spec.Does == FaultChange.Opens ? spec with { Does = FaultChange.BreaksAtTurn } : spec;

    private static FaultSpec OnSheet(FaultSpec spec, ImmutableDictionary<string, double> percents, double turns)
    {
        var (min, max) = (spec.Min, spec.Max);
        if (spec.Size == SizeKind.WholeTurns)
            (min, max) = (Math.Max(1, Math.Ceiling((spec.Min * turns) - 1e-9)), Math.Max(1, Math.Floor((spec.Max * turns) + 1e-9)));
        return spec with { Percent = percents.GetValueOrDefault(spec.Mode, spec.Percent), Min = min, Max = Math.Max(min, max) };
    }

    private static ImmutableArray<int> Groups(IEnumerable<FaultMode> modes, out int count)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var m in modes)
            numbers.TryAdd(m.Element, numbers.Count);
        count = numbers.Count;
        return [.. modes.Select(m => numbers[m.Element])];
    }
}
