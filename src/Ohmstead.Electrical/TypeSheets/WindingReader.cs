using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Reads windings, and resistors with taps or sliders, from JSON.</summary>
internal static class WindingReader
{
    /// <summary>In so many parts of its length taps and sliders of a resistor count, where it does not say.</summary>
    private const double LengthParts = 100;

    public static Winding Read(JsonCursor at, ElementHead e)
    {
        var isOnCore = e.Kind == ElementKind.Winding;
        var turns = isOnCore ? at.Number("turns", 1e-3, 1e6) : at.Number("turns", LengthParts, 1e-3, 1e6);
        var taps = at.List("taps")
            .Where(t => t.IsObject())
            .Select(t => new Tap(InWinding(t, "turn", turns), t.Word("to")))
            .ToImmutableArray();
        var sliders = at.List("sliders").Where(s => s.IsObject()).Select(s => ReadSlider(s, turns)).ToImmutableArray();
        return new Winding(
            e.Id,
            e.From,
            e.To,
            isOnCore ? at.Word("core") : "",
            turns,
            at.Number("ohms", 0, ElementReader.MostOhms),
            isOnCore ? at.Number("leakageHenries", 0, 0, 1e6) : 0,
            taps,
            sliders,
            e.Spread,
            e.Percents
        )
        {
            Kind = e.Kind,
            MostAmps = ElementReader.Amps(at, "mostAmps"),
        };
    }

    private static Slider ReadSlider(JsonCursor s, double turns)
    {
        var below = s.Number("offBelow", 0, 0, 1);
        return new(
            s.Word("id"),
            s.Word("control"),
            InWinding(s, "fromTurn", turns),
            InWinding(s, "toTurn", turns),
            s.Word("to"),
            s.Number("contactOhms", 0, ElementReader.MostOhms),
            Bridges(s),
            ElementReader.Spread(s),
            ElementReader.Percents(s, ElementKind.Slider)
        )
        {
            MostAmps = ElementReader.Amps(s, "mostAmps"),
            KindError = ElementReader.Spread(s, "kindError"),
            OffBelow = below,
            OffAbove = OffAbove(s, below),
        };
    }

    /// <summary>It touches something somewhere.</summary>
    private static double OffAbove(JsonCursor slider, double below)
    {
        var above = slider.Number("offAbove", 1, 0, 1);
        if (above < below)
            slider.Report(
                "offAbove",
                $"is {JsonCursor.Show(above)}, under offBelow ({JsonCursor.Show(below)})",
                "the slider must touch something between the two"
            );
        return above;
    }

    private static double InWinding(JsonCursor at, string name, double turns)
    {
        var turn = at.Number(name, 0, 1e6);
        if (turn > turns)
            at.Report(name, $"is {JsonCursor.Show(turn)}, outside the winding", $"a turn from 0 to {JsonCursor.Show(turns)} is expected");
        return Math.Min(turn, turns);
    }

    private static int Bridges(JsonCursor at)
    {
        var bridges = at.Number("bridgesTurns", 0, 0, 1);
        if (bridges is not (0 or 1))
            at.Report("bridgesTurns", $"is {JsonCursor.Show(bridges)}", "0 or 1 is expected");
        return (int)bridges;
    }
}
