using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>Another part in the place of one, while its figures are being filled in.</summary>
/// <param name="Element">The element in whose place it comes.</param>
/// <param name="Fields">The figures that its kind has, as a type sheet names them, and what they are now.</param>
public sealed record PartDraft(string Element, ImmutableArray<(string Name, string Text)> Fields)
{
    /// <summary>A silicon diode of the size that serves for a disc: some 0.8 V at 1 A (common practice, no source).</summary>
    private static readonly ImmutableArray<(string Name, string Text)> Silicon =
    [
        ("saturationAmps", "1e-9"),
        ("slopeVolts", "0.04"),
        ("seriesOhms", "0.02"),
        ("leakageOhms", "1e6"),
    ];

    /// <summary>True when a silicon diode can be put in its place.</summary>
    public bool IsRectifier { get; private init; }

    /// <summary>The part as the unit has it now; null where nothing can take its place by itself (a slider belongs to its winding).</summary>
    public static PartDraft? Of(BenchUnit unit, TypeSheet sheet, string element) =>
        OwnSheet.Part(unit, sheet, element) is { } part
            ? new PartDraft(element, PartFile.Figures(part)) { IsRectifier = part is Rectifier }
            : null;

    /// <summary>A figure in words, with its unit: the sheet's own names are for its author.</summary>
    public static string Label(string name) =>
        name switch
        {
            "ohms" => "Resistance, Ω",
            "openOhms" => "Resistance when open, Ω",
            "seriesOhms" => "Series resistance, Ω",
            "leakageOhms" => "Leakage resistance, Ω",
            "contactOhms" => "Contact resistance, Ω",
            "saturationAmps" => "Saturation current, A",
            "slopeVolts" => "Slope, V",
            "volts" => "Rated volts, V",
            "amps" => "Rated amps, A",
            "ratedAmps" => "Carries for hours, A",
            "mostAmps" => "Carries at most, A",
            "farads" => "Capacitance, F",
            "turns" => "Turns",
            "leakageHenries" => "Leakage inductance, H",
            _ => "Figure",
        };

    /// <summary>The same with the figures of a silicon diode.</summary>
    public PartDraft AsSilicon() => this with { Fields = Silicon };

    /// <summary>The same with one figure typed anew.</summary>
    public PartDraft With(string name, string text) => this with { Fields = [.. Fields.Select(f => f.Name == name ? (name, text) : f)] };

    /// <summary>The fact that puts it in; or every problem, when a figure is none or the unit would make no circuit with it.</summary>
    public (PartChanged? Fact, ImmutableArray<string> Problems) Finish(BenchUnit unit, TypeSheet sheet, string words)
    {
        if (OwnSheet.Part(unit, sheet, Element) is not { } old)
            return (null, ["It is not in this unit any more."]);
        // Its own chances and spread were those of the old part.
        var part = old with
        {
            Spread = SpreadOverrides.None,
            Percents = ImmutableDictionary<string, double>.Empty,
        };
        var figures = ImmutableArray.CreateBuilder<(string Name, double Value)>();
        var problems = ImmutableArray.CreateBuilder<string>();
        foreach (var (name, text) in Fields)
        {
            var number = NumberText.Plain(text);
            if (number.Problem.Length > 0)
                problems.Add($"{Label(name)}: {number.Problem}");
            else
                figures.Add((name, number.Value));
        }
        if (problems.Count > 0)
            return (null, problems.ToImmutable());
        var fact = new PartChanged(Element, PartChange.Replaced, PartFile.Write(part, figures), words);
        var tried = unit with { Standing = unit.Standing.Add(unit.Last with { Fact = fact }) };
        var parsed = OwnSheet.Of(tried, sheet);
        return parsed.IsSound ? (fact, []) : (null, [.. parsed.Problems.Select(p => $"{p.Wrong}: {p.Right}")]);
    }
}
