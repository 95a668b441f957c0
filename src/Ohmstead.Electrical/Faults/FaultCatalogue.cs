using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Faults;

/// <summary>All fault modes of a sheet, in sheet order, with their chances before any reading.</summary>
public sealed class FaultCatalogue
{
    private readonly Dictionary<string, FaultMode> byName;

    /// <summary>Lists the modes of a sheet.</summary>
    public FaultCatalogue(UnitModel model)
    {
        var all = ImmutableArray.CreateBuilder<FaultMode>();
        var sliderAt = 0;
        for (var n = 0; n < model.Sheet.Elements.Length; n++)
        {
            var e = model.Sheet.Elements[n];
            foreach (var spec in e.Kind.Faults())
                all.Add(new(all.Count, e.Id, n, e.Kind, OnSheet(spec, e.Percents, (e as Winding)?.Turns ?? 0)));
            if (e is not Winding w)
                continue;
            foreach (var s in w.Sliders)
            {
                foreach (var spec in ElementKind.Slider.Faults())
                    all.Add(new(all.Count, s.Id, sliderAt, ElementKind.Slider, OnSheet(spec, s.Percents, 0)));
                sliderAt++;
            }
        }
        Modes = all.ToImmutable();
        byName = Modes.ToDictionary(m => m.Name, StringComparer.Ordinal);
        ElementOf = Groups(Modes, out var count);
        ElementCount = count;
    }

    /// <summary>The modes; <see cref="FaultMode.Number"/> is the place.</summary>
    public ImmutableArray<FaultMode> Modes { get; }

    /// <summary>By mode: the number of its element or slider; an element is in one mode at a time.</summary>
    public ImmutableArray<int> ElementOf { get; }

    /// <summary>Elements and sliders that can fail.</summary>
    public int ElementCount { get; }

    /// <summary>The mode named <c>element:mode</c>, or null.</summary>
    public FaultMode? Find(string name) => byName.GetValueOrDefault(name);

    /// <summary>
    /// Odds of each mode against its element being sound: c·p/(1 − p), with c = 1 or such that the mean number of faults is
    /// <paramref name="expectedFaults"/>.
    /// </summary>
    public double[] Odds(double? expectedFaults)
    {
        var odds = Modes.Select(m => m.Percent / (100 - m.Percent)).ToArray();
        if (expectedFaults is not { } mean)
            return odds;
        var sums = new double[ElementCount];
        for (var n = 0; n < odds.Length; n++)
            sums[ElementOf[n]] += odds[n];
        var most = sums.Count(s => s > 0);
        if (most == 0)
            return odds;
        var target = Math.Min(mean, most * 0.999);
        var (low, high) = (Math.Log(1e-12), Math.Log(1e12));
        for (var k = 0; k < 200; k++)
        {
            var c = Math.Exp((low + high) / 2);
            if (sums.Sum(s => c * s / (1 + (c * s))) < target)
                low = Math.Log(c);
            else
                high = Math.Log(c);
        }
        var scale = Math.Exp((low + high) / 2);
        for (var n = 0; n < odds.Length; n++)
            odds[n] *= scale;
        return odds;
    }

    /// <summary>Chance of each mode before any reading, from its odds.</summary>
    public double[] Chances(double[] odds)
    {
        var sums = new double[ElementCount];
        for (var n = 0; n < odds.Length; n++)
            sums[ElementOf[n]] += odds[n];
        return [.. odds.Select((o, n) => o / (1 + sums[ElementOf[n]]))];
    }

    private static FaultSpec OnSheet(FaultSpec spec, ImmutableDictionary<string, double> percents, double turns)
    {
        var (min, max) = (spec.Min, spec.Max);
        if (spec.Size == SizeKind.WholeTurns)
            (min, max) = (Math.Max(1, Math.Ceiling((spec.Min * turns) - 1e-9)), Math.Max(1, Math.Floor((spec.Max * turns) + 1e-9)));
        return spec with { Percent = percents.GetValueOrDefault(spec.Mode, spec.Percent), Min = min, Max = Math.Max(min, max) };
    }

    private static ImmutableArray<int> Groups(ImmutableArray<FaultMode> modes, out int count)
    {
        var numbers = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var m in modes)
            numbers.TryAdd(m.Element, numbers.Count);
        count = numbers.Count;
        return [.. modes.Select(m => numbers[m.Element])];
    }
}
