using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Reads elements and cores from JSON, collecting problems. Also used for the elements in a unit file.</summary>
internal static class ElementReader
{
    internal const double MostOhms = 1e13;
    private const double LeastFarads = 1e-15;
    private const double MostFarads = 100;

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
        Element read = kind switch
        {
            ElementKind.Winding => WindingReader.Read(at, id, from, to, spread, percents),
            ElementKind.Resistor when at.Has("sliders") || at.Has("taps") => WindingReader.Read(at, id, from, to, spread, percents) with
            {
                Kind = ElementKind.Resistor,
            },
            ElementKind.Capacitor => new Capacitor(id, from, to, at.Number("farads", LeastFarads, MostFarads), spread, percents),
            ElementKind.Lamp => new Lamp(id, from, to, at.Number("volts", 0.1, 1e4), at.Number("amps", 1e-4, 1e3), spread, percents),
            ElementKind.Rectifier => new Rectifier(
                id,
                from,
                to,
                at.Number("saturationAmps", 1e-16, 10),
                at.Number("slopeVolts", 0.005, 10),
                at.Number("seriesOhms", 0, MostOhms),
                at.Number("leakageOhms", 1e-3, MostOhms),
                spread,
                percents
            ),
            ElementKind.Switch => new Switch(
                id,
                from,
                to,
                at.Word("control"),
                Positions(at),
                at.Number("ohms", 0.01, 0, MostOhms),
                at.Number("openOhms", 1e8, 1e-3, MostOhms),
                spread,
                percents
            )
            {
                MostAmps = MostAmps(at),
            },
            ElementKind.Wire => new Resistive(id, kind, from, to, at.Number("ohms", 0.004, 0, MostOhms), spread, percents),
            ElementKind.Joint => new Resistive(id, kind, from, to, at.Number("ohms", 0.002, 0, MostOhms), spread, percents),
            ElementKind.Breaker => new Resistive(id, kind, from, to, at.Number("ohms", 0, MostOhms), spread, percents)
            {
                RatedAmps = at.Number("ratedAmps", 0, LeastAmps, HighestAmps),
            },
            ElementKind.Resistor or ElementKind.Insulation => new Resistive(
                id,
                kind,
                from,
                to,
                at.Number("ohms", 0, MostOhms),
                spread,
                percents
            ),
            ElementKind.Slider => throw new System.Diagnostics.UnreachableException("A slider is read with its winding."),
        };
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
    internal static double MostAmps(JsonCursor at) => at.Number("mostAmps", 0, LeastAmps, HighestAmps);

    private static ImmutableArray<string> Positions(JsonCursor at)
    {
        if (!at.Has("closedIn"))
            at.Report("closedIn", "is missing", "a list of the control's positions is required");
        return at.Words("closedIn");
    }

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
