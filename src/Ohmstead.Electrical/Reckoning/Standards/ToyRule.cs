using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>A figure of an open standard of toys or model railroads. Each was read in the source named, unless its mark says memory.</summary>
/// <param name="Source">Which standard.</param>
/// <param name="Says">Of what, for a person.</param>
/// <param name="Of">What is held against it.</param>
/// <param name="Least">The least; null for none.</param>
/// <param name="Most">The most, or the nominal figure; null for none.</param>
/// <param name="Unit">Of both.</param>
public sealed record ToyRule(string Source, string Says, ToyFigure Of, double? Least, double? Most, string Unit)
{
    /// <summary>A row for one current only: <c>ac</c> or <c>dc</c>; empty for both.</summary>
    public string Current { get; init; } = "";

    /// <summary>It is a nominal figure: a little more is no fault.</summary>
    public bool IsNominal { get; init; }

    /// <summary>It holds for tracks from this gauge on [mm].</summary>
    public double FromMillimetres { get; init; }

    /// <summary>And below this one [mm].</summary>
    public double BelowMillimetres { get; init; } = double.PositiveInfinity;

    private const string Toys = "EN 61558-2-7, as cited";
    private const string NewToy = "a toy transformer made today";

    /// <summary>All of them.</summary>
    public static ImmutableArray<ToyRule> All { get; } =
    [
        new(Toys, NewToy, ToyFigure.VoltAmperes, null, 200, "VA"),
        new(Toys, NewToy, ToyFigure.Volts, null, 24, "V AC") { Current = "ac" },
        new(Toys, NewToy, ToyFigure.Volts, null, 33, "V DC") { Current = "dc" },
        new(Toys, NewToy, ToyFigure.Amps, null, 10, "A"),
        new("Directive 2009/48/EC, annex II", "a toy and its bare parts", ToyFigure.Volts, null, 24, "V"),
        new("IEC 62115, clause 8", "a toy’s input, beside its plate", ToyFigure.InputOverPlate, null, 1.2, "times"),
        new("UL 696, scope", "a toy transformer for toys", ToyFigure.Volts, null, 30, "V RMS") { Current = "ac" },
        new("UL 697, scope", "its line, nominal", ToyFigure.LineVolts, null, 120, "V") { IsNominal = true },
        new("UL 1585, scope", "a class 2 transformer, open or loaded", ToyFigure.Volts, null, 30, "V RMS") { Current = "ac" },
        new("NEM 640 (1988)", "AC trains, nominal", ToyFigure.TrackVolts, null, 16, "V") { Current = "ac", IsNominal = true },
        new("NEM 640 (1988)", "AC trains, line frequency", ToyFigure.LineHertz, null, 60, "Hz") { Current = "ac" },
        new("NEM 640 (1988)", "AC trains, reversing pulse, nominal", ToyFigure.PulseVolts, null, 24, "V")
        {
            Current = "ac",
            IsNominal = true,
        },
        new("NEM 640 (1988)", "AC trains, how long the pulse lasts", ToyFigure.PulseSeconds, 0.1, 3, "s") { Current = "ac" },
        Dc(8, 0, 6.5000001),
        Dc(12, 6.5000001, 32),
        Dc(16, 32, double.PositiveInfinity),
        Fixed("ac", 10, 10, 0, 6.5000001),
        Fixed("ac", 14, 16, 6.5000001, 45),
        Fixed("ac", 14, 18, 45, double.PositiveInfinity),
        Fixed("dc", 8, 8, 0, 6.5000001),
        Fixed("dc", 12, 12, 6.5000001, 45),
        Fixed("dc", 14, 18, 45, double.PositiveInfinity),
        new("NEM 961 (2009)", "copper between modules", ToyFigure.BusSquareMillimetres, 1.5, null, "mm²"),
        new("NMRA S-9", "DC at the rail, greatest load", ToyFigure.TrackVolts, 12, null, "V") { Current = "dc" },
        new("club pages", "wire around the layout, 14 AWG", ToyFigure.BusSquareMillimetres, 2.08, null, "mm²"),
        new("club pages", "wire around a small layout, 18 AWG", ToyFigure.BusSquareMillimetres, 0.823, null, "mm²"),
        new("club pages", "feeder to the rail, 24 AWG", ToyFigure.FeederSquareMillimetres, 0.2047, null, "mm²"),
    ];

    /// <summary>Track volts of digital control over those of DC (NMRA S-9.1, summary seen) [V].</summary>
    public const double DigitalOverDc = 2;

    private static ToyRule Dc(double volts, double from, double below) =>
        new("NEM 630 (1982)", "DC trains, nominal, the mean counts", ToyFigure.TrackVolts, null, volts, "V")
        {
            Current = "dc",
            IsNominal = true,
            FromMillimetres = from,
            BelowMillimetres = below,
        };

    private static ToyRule Fixed(string current, double least, double most, double from, double below) =>
        new("NEM 611 (2017)", "lamps and accessories, nominal", ToyFigure.AccessoryVolts, least, most, "V")
        {
            Current = current,
            IsNominal = true,
            FromMillimetres = from,
            BelowMillimetres = below,
        };
}

/// <summary>What a rule of toys and model railroads is about.</summary>
public enum ToyFigure
{
    /// <summary>A post’s volts.</summary>
    Volts,

    /// <summary>The same, on a track.</summary>
    TrackVolts,

    /// <summary>The same, for lamps and accessories.</summary>
    AccessoryVolts,

    /// <summary>What it gives.</summary>
    VoltAmperes,

    /// <summary>What it gives.</summary>
    Amps,

    /// <summary>Watts taken in over those of the plate.</summary>
    InputOverPlate,

    /// <summary>The line it is made for.</summary>
    LineVolts,

    /// <summary>Its frequency.</summary>
    LineHertz,

    /// <summary>The pulse that reverses a train.</summary>
    PulseVolts,

    /// <summary>How long it lasts.</summary>
    PulseSeconds,

    /// <summary>Copper of the wire around the layout.</summary>
    BusSquareMillimetres,

    /// <summary>Copper of a feeder.</summary>
    FeederSquareMillimetres,
}
