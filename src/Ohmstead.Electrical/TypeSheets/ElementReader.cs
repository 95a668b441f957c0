using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Reads elements and cores from JSON, collecting problems. Also used for the elements in a unit file.</summary>
internal static class ElementReader
{
    internal const double MostOhms = 1e13;
    private const double LeastAmps = 1e-3;
    private const double HighestAmps = 1e4;

    public static Element? Read(JsonCursor at)
    {
        if (!at.IsObject())
            return null;
        var id = at.Word("id");
        var word = at.Word("kind");
        var from = at.Word("from");
        var to = at.Word("to");
        var spread = Spread(at);
        if (ElementKinds.Find(word) is not { } kind)
        {
            if (word.Length > 0)
                at.Report("kind", $"\"{word}\" is no kind of element", "one of " + string.Join(", ", ElementKinds.Words));
            return null;
        }
        var percents = Percents(at, kind);
        if (from.Length > 0 && from == to)
            at.Report("to", $"is the same terminal as from (\"{from}\")", "the two ends must differ");
        var kindError = Spread(at, "kindError");
        if (at.Has("sliders") && kind is not (ElementKind.Winding or ElementKind.Resistor))
            at.Report("sliders", $"are on a {kind.Word()}", "sliders run on a winding or along a resistor");
        var read = kind.Read(at, new(id, kind, from, to, spread, percents));
        return read with { KindError = kindError, Colour = at.Remark("colour"), AsRead = new(at.Element) };
    }

    public static Core? ReadCore(JsonCursor at)
    {
        if (!at.IsObject())
            return null;
        var points = ImmutableArray.CreateBuilder<(double, double)>();
        foreach (var point in at.List("excitation"))
        {
            var pair = point.AsList();
            if (pair.Length == 2)
                points.Add((pair[0].AsNumber(0, 1e6), pair[1].AsNumber(0, 1e6)));
            else
                point.Report("is no pair", "[volts, amps] is expected");
        }
        var henries = at.Has("magnetisingHenries") ? at.Number("magnetisingHenries", 1e-9, 1e9) : 0;
        if (henries == 0)
            CheckExcitation(at, points);
        return new Core(
            at.Word("id"),
            at.Word("referenceWinding"),
            at.Number("lossOhms", 1e-3, MostOhms),
            points.ToImmutable(),
            henries,
            Spread(at)
        )
        {
            KindError = Spread(at, "kindError"),
        };
    }

    private static void CheckExcitation(JsonCursor at, ImmutableArray<(double Volts, double Amps)>.Builder points)
    {
        if (points.Count < 2)
        {
            at.Report(
                "excitation",
                points.Count == 0 ? "is missing, and magnetisingHenries too" : "has one point",
                "give at least two points [volts, amps], or magnetisingHenries"
            );
            return;
        }
        if (points[0] != (0, 0))
            at.Report("excitation[0]", "is not [0, 0]", "the magnetising current starts at [0, 0]");
        for (var n = 1; n < points.Count; n++)
            if (points[n].Volts <= points[n - 1].Volts || points[n].Amps <= points[n - 1].Amps)
                at.Report(
                    FormattableString.Invariant($"excitation[{n}]"),
                    "does not rise",
                    "volts and amps must both rise from point to point"
                );
    }

    /// <summary>What a part carries for hours; 0 where the sheet does not say.</summary>
    internal static double Amps(JsonCursor at, string name) => at.Number(name, 0, LeastAmps, HighestAmps);

    internal static SpreadOverrides Spread(JsonCursor at, string field = "spread") =>
        at.Has(field) ? new(at.Fields(field).ToImmutableDictionary(f => f.Name, f => f.At.AsNumber(0, 3))) : SpreadOverrides.None;

    internal static ImmutableDictionary<string, double> Percents(JsonCursor at, ElementKind kind)
    {
        if (!at.Has("faults"))
            return ImmutableDictionary<string, double>.Empty;
        var modes = kind.Faults();
        var own = ImmutableDictionary.CreateBuilder<string, double>();
        foreach (var (mode, value) in at.Fields("faults"))
        {
            if (!modes.Any(m => m.Mode == mode))
                value.Report($"\"{mode}\" is no fault mode of a {kind.Word()}", "one of " + string.Join(", ", modes.Select(m => m.Mode)));
            own[mode] = value.AsNumber(0, 99);
        }
        return own.ToImmutable();
    }
}
