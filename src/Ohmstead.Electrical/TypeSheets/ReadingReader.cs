using System.Collections.Immutable;
using System.Text.Json;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Reads readings and the conditions under which they are taken, collecting problems.</summary>
public static class ReadingReader
{
    private static readonly (string Name, Quantity Quantity)[] Names =
    [
        ("ohms", Quantity.Ohms),
        ("insulation-ohms", Quantity.InsulationOhms),
        ("ac-volts", Quantity.AcVolts),
        ("dc-volts", Quantity.DcVolts),
        ("ac-amps", Quantity.AcAmps),
        ("watts", Quantity.Watts),
    ];

    /// <summary>The quantity's name in files.</summary>
    public static string NameOf(Quantity quantity) => Names.First(n => n.Quantity == quantity).Name;

    /// <summary>The quantity of this name, or null.</summary>
    public static Quantity? QuantityOf(string name)
    {
        foreach (var n in Names)
            if (n.Name == name)
                return n.Quantity;
        return null;
    }

    /// <summary>The word for the volts of the sheet's own supply.</summary>
    private const string Mains = "mains";

    /// <param name="supplyVolts">Volts of the sheet's supply, which "mains" stands for [V RMS].</param>
    internal static ReadingSpec? Read(JsonCursor at, double supplyVolts)
    {
        if (!at.IsObject())
            return null;
        var name = at.Word("quantity");
        var quantity = QuantityOf(name);
        if (quantity is null && name.Length > 0)
            at.Report("quantity", $"\"{name}\" is no quantity", "one of " + string.Join(", ", Names.Select(n => n.Name)));
        var atSource = quantity is Quantity.AcAmps or Quantity.Watts;
        var between = at.Words("between");
        if (!atSource && between.Length != 2)
            at.Report("between", between.Length == 0 ? "is missing" : "does not name two terminals", "[first, second] is required");
        var state = at.Has("state") ? State(at.At("state"), supplyVolts) : EmptyState;
        CheckSource(at, quantity, state);
        return new ReadingSpec(
            at.Word("id"),
            at.Word("title", ""),
            quantity ?? Quantity.Ohms,
            between.ElementAtOrDefault(0) ?? "",
            between.ElementAtOrDefault(1) ?? "",
            state,
            at.Number("minutes", 1, 0, 1e5),
            at.Word("access", ReadingSpec.Closed),
            at.Words("needs"),
            LimitsOf(at),
            at.Flag("gate"),
            at.Word("hazard", "")
        );
    }

    private static ReadingState EmptyState { get; } = new(null, ImmutableDictionary<string, ControlPosition>.Empty, [], [], [], 20);

    private static void CheckSource(JsonCursor at, Quantity? quantity, ReadingState state)
    {
        if (quantity is Quantity.Ohms or Quantity.InsulationOhms && state.Source is not null)
            at.Report("state.source", "stands in a reading of ohms", "the instrument itself feeds it: leave the source out");
        if (quantity is Quantity.AcAmps or Quantity.Watts && (state.Source is null || state.Source.IsDirect))
            at.Report(
                "state.source",
                "is missing or direct",
                "amps and watts are drawn from an alternating source: { \"from\", \"to\", \"volts\" }"
            );
        if (quantity is Quantity.AcVolts or Quantity.DcVolts && state.Source is null)
            at.Report("state.source", "is missing", "a reading of volts needs a source");
    }

    private static ReadingState State(JsonCursor at, double supplyVolts)
    {
        if (!at.IsObject())
            return EmptyState;
        return new ReadingState(
            at.Has("source") ? Source(at.At("source"), supplyVolts) : null,
            Controls(at),
            Loads(at),
            at.Words("lifted"),
            [.. at.List("joined").Select(j => Joined(j))],
            at.Number("celsius", 20, -60, 250)
        );
    }

    private static ImmutableArray<string> Joined(JsonCursor at)
    {
        ImmutableArray<string> words = [.. at.AsList().Select(c => c.AsWord())];
        if (words.Length < 2)
            at.Report("joins fewer than two terminals", "a list of two or more is expected");
        return words;
    }

    /// <summary>Where a throttle may stand.</summary>
    internal static readonly Bound Throttle = new(0, 1);

    /// <summary>The positions of controls in the field <c>controls</c>.</summary>
    public static ImmutableDictionary<string, ControlPosition> Controls(JsonCursor at) =>
        at.Fields("controls")
            .ToImmutableDictionary(
                f => f.Name,
                f =>
                    f.At.Element.ValueKind == JsonValueKind.String
                        ? new ControlPosition(double.NaN, f.At.AsWord())
                        : new ControlPosition(f.At.AsNumber(Throttle.Least, Throttle.Most), "")
            );

    /// <summary>What a load may be [Ω].</summary>
    internal static readonly Bound LoadOhms = new(1e-4, 1e12);

    /// <summary>What a load may have in series [H].</summary>
    internal static readonly Bound LoadHenries = new(0, 1e4);

    /// <summary>The loads in the field <c>loads</c>.</summary>
    public static ImmutableArray<LoadSpec> Loads(JsonCursor at) =>
        [
            .. at.List("loads", 100)
                .Where(l => l.IsObject())
                .Select(l => new LoadSpec(l.Word("from"), l.Word("to"), l.Number("ohms", LoadOhms), l.Number("henries", 0, LoadHenries))),
        ];

    private static SourceSpec? Source(JsonCursor at, double supplyVolts)
    {
        if (!at.IsObject())
            return null;
        var (from, to) = (at.Word("from"), at.Word("to"));
        if (from.Length > 0 && from == to)
            at.Report("to", "is the same terminal as from", "a source feeds two different terminals");
        var direct = at.Has("directAmps") ? at.Number("directAmps", 1e-6, 1000) : 0;
        if (direct > 0)
            return new SourceSpec(from, to, 0, direct, 0, 0, 0);
        var series = at.Number("seriesOhms", 0, 0, 1e9);
        var (lampVolts, lampAmps) = (0.0, 0.0);
        if (at.Has("seriesLamp") && at.At("seriesLamp").IsObject())
            (lampVolts, lampAmps) = (at.At("seriesLamp").Number("volts", 0.1, 1e4), at.At("seriesLamp").Number("amps", 1e-4, 1e3));
        return new SourceSpec(from, to, Volts(at, supplyVolts), 0, series, lampVolts, lampAmps);
    }

    private static double Volts(JsonCursor at, double supplyVolts)
    {
        if (!at.Has("volts") || at.At("volts") is not { Element.ValueKind: JsonValueKind.String } word)
            return at.Number("volts", 1e-3, 1e5);
        if (word.Element.GetString() != Mains)
            word.Report("is no word for volts", $"a number, or \"{Mains}\" for the sheet's supply");
        return supplyVolts;
    }

    private static Limits? LimitsOf(JsonCursor at)
    {
        if (!at.Has("limits") || !at.At("limits").IsObject())
            return null;
        var limits = at.At("limits");
        if (!limits.Has("min") && !limits.Has("max"))
            limits.Report("holds neither min nor max", "at least one of them is required");
        var min = limits.Has("min") ? limits.Number("min", -1e15, 1e15) : double.NegativeInfinity;
        var max = limits.Has("max") ? limits.Number("max", -1e15, 1e15) : double.PositiveInfinity;
        if (min > max)
            limits.Report("min", "is above max", "min must not be above max");
        return new Limits(min, max);
    }
}
