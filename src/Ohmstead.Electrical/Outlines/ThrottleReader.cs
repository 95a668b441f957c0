using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Outlines.OutlineWords;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Reads the throttles of an outline, and what lies between one and its post: boosts, whistles, rectifiers.</summary>
internal static class ThrottleReader
{
    private const double LeastVolts = OutlineReader.LeastVolts,
        MostVolts = OutlineReader.MostVolts;

    private const double MostOhms = 1e4;

    private static readonly Figure AnyLowest = new(6, 0.4, Origin.Assumed),
        AnyHighest = new(18, 0.25, Origin.Assumed);

    private static readonly Figure AnyRheostat = new(25, 0.7, Origin.Assumed);

    /// <summary>A resistance wire that is there, of ohms that nobody knows.</summary>
    private static readonly Figure AnyWire = Priors.ResistanceWire with { Doubt = 0 };

    private static readonly Figure AnyBoost = new(5, 0, Origin.Assumed);

    /// <summary>Doubt of a boost that is there, of volts that nobody knows: common practice, no source.</summary>
    private const double DoubtOfUnknownBoost = 0.3;

    public static ThrottleBlock Throttle(JsonCursor at, int place, string on)
    {
        var id = Id(at, "id");
        var kind = OneOf(
            at,
            Name(at, "kind"),
            "kind",
            ("roller", ThrottleKind.Roller),
            ("shoe", ThrottleKind.Shoe),
            ("steps", ThrottleKind.Steps),
            ("rheostat", ThrottleKind.Rheostat)
        );
        if (kind == ThrottleKind.Rheostat)
            return new(place, id, on, kind, [], FigureReader.Required(at, "ohms", 0.1, MostOhms, AnyRheostat));
        if (!at.Has("volts"))
        {
            at.Report(
                "volts",
                "are missing",
                kind == ThrottleKind.Steps ? "the volts of every step, rising" : "[lowest, highest] with no load"
            );
            return new(place, id, on, kind, [AnyLowest, AnyHighest], null);
        }
        return new(place, id, on, kind, Volts(at.At("volts"), kind), null);
    }

    private static ImmutableArray<Figure> Volts(JsonCursor at, ThrottleKind kind)
    {
        if (kind != ThrottleKind.Steps && at.Element.ValueKind == JsonValueKind.String)
            return [FigureReader.Read(at, LeastVolts, MostVolts, AnyLowest), FigureReader.Read(at, LeastVolts, MostVolts, AnyHighest)];
        var list = at.AsList(60);
        ImmutableArray<Figure> volts =
        [
            .. list.Select(
                (v, n) =>
                    FigureReader.Read(
                        v,
                        LeastVolts,
                        MostVolts,
                        kind == ThrottleKind.Steps ? null
                            : n == 0 ? AnyLowest
                            : AnyHighest
                    )
            ),
        ];
        if (kind != ThrottleKind.Steps && volts.Length != 2)
            at.Report("are not two", "[lowest, highest] with no load");
        if (kind == ThrottleKind.Steps && volts.Length < 2)
            at.Report("are fewer than two steps", "the volts of every step, rising");
        for (var n = 1; n < volts.Length; n++)
            if (volts[n].Value <= volts[n - 1].Value)
                list[n]
                    .Report(
                        string.Create(
                            CultureInfo.InvariantCulture,
                            $"is {volts[n].Value:G6}, not above the {volts[n - 1].Value:G6} before it"
                        ),
                        kind == ThrottleKind.Steps ? "steps must rise" : "the lowest must be below the highest"
                    );
        return volts.Length >= 2 ? volts : [AnyLowest, AnyHighest];
    }

    public static Figure Boost(JsonCursor at, Figure usual, double least) =>
        at.Has("boost") ? FigureReader.Read(at.At("boost"), least, MostVolts, usual with { Doubt = DoubtOfUnknownBoost }) : usual;

    public static WhistleBlock Whistle(JsonCursor at, int place)
    {
        ImmutableArray<string> throttles =
            at.Has("throttle") && at.At("throttle").Element.ValueKind == JsonValueKind.Array
                ? at.Words("throttle")
                : [Name(at, "throttle")];
        if (throttles.IsEmpty)
            at.Report("throttle", "names none", "the id of a throttle, or a list of them for one lever");
        if (throttles.Distinct(StringComparer.Ordinal).Count() < throttles.Length)
            at.Report("throttle", "names one twice", "each once");
        var boost = Boost(at, AnyBoost, 0);
        if (boost.Value is > 0 and < LeastVolts)
            at.Report(
                "boost",
                $"is {JsonCursor.Show(boost.Value)}",
                $"0 for none, or from {JsonCursor.Show(LeastVolts)} to {JsonCursor.Show(MostVolts)}"
            );
        var steps = at.Number("steps", 2, 1, 2);
        if (steps is not (1 or 2))
            at.Report("steps", $"is {JsonCursor.Show(steps)}", "1 or 2 is expected");
        return new(
            place,
            throttles.IsEmpty ? [""] : throttles,
            boost,
            OneOf(at, Name(at, "from", "own"), "from", ("own", false), ("winding", true)),
            (int)steps,
            Cell(at)
        );
    }

    private static string Cell(JsonCursor at) =>
        OneOf(at, Name(at, "cell", OpenWords.Cells[0]), "cell", [.. OpenWords.Cells.Select(c => (c, c))]);

    public static RectifierBlock Rectifier(JsonCursor at, int place)
    {
        var cell = Cell(at);
        if (at.Has("post"))
        {
            var isBridge = OneOf(at, Name(at, "kind", "half"), "kind", ("half", false), ("bridge", true));
            if (isBridge)
                at.Report("kind", "is a bridge on one post", "a post of its own has one cell: half; a bridge stands behind a throttle");
            return new(
                place,
                "",
                false,
                cell,
                PostName(at, "post"),
                PostName(at, "from"),
                at.Has("ohms") ? FigureReader.Read(at.At("ohms"), 0.01, MostOhms, AnyWire) : null
            );
        }
        if (!at.Has("throttle"))
            at.Report("stands on no post and behind no throttle", "name a throttle, or a post and the post that feeds it");
        return new(
            place,
            Name(at, "throttle", " "),
            OneOf(at, Name(at, "kind", "bridge"), "kind", ("half", false), ("bridge", true)),
            cell,
            "",
            "",
            null
        );
    }
}
