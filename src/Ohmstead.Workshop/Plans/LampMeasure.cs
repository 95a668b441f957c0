using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>Another lamp in the socket: is it cool enough, how bright and how long does it live (<see cref="LampInPlace"/>)?</summary>
public sealed record LampMeasure(ImmutableArray<MeasureField> Fields, double OriginalVolts, double OriginalAmps) : PartMeasure(Fields)
{
    private const string SameBase = "same";

    internal static LampMeasure Of(Lamp lamp) =>
        new(
            [
                new("socket", "Volts at the socket", "V", 0.1, 60, ShopEdit.Show(lamp.Volts)),
                new("volts", "New lamp, marked", "V", 0.1, 60, ShopEdit.Show(lamp.Volts)),
                new("amps", "New lamp, marked", "A", 0.001, 10, ShopEdit.Show(lamp.Amps)),
            ],
            lamp.Volts,
            lamp.Amps
        );

    /// <inheritdoc/>
    protected override MeasureVerdict Answer()
    {
        var answer = new LampInPlace(
            Number("socket"),
            new("original", OriginalVolts, OriginalAmps, SameBase),
            [new("new", Number("volts"), Number("amps"), SameBase)]
        ).Answer();
        var lamp = answer.Lamps[0];
        return From(
            answer,
            lamp.CoolEnough ? DecidedAct.Replace : DecidedAct.Open,
            lamp.CoolEnough
                ? $"{Marked} is cool enough here"
                : $"not {Marked}: {ValueText.Of(lamp.Watts, Quantity.Watts)} is too hot for this socket",
            ("draws", $"{ValueText.Of(lamp.Amps, Quantity.AcAmps)}, {ValueText.Of(lamp.Watts, Quantity.Watts)}"),
            ("light", $"{ValueText.Plain(Math.Round(lamp.LightPercent))} % of the original"),
            ("life", $"{ValueText.Number(lamp.LifeFactorLow)} to {ValueText.Number(lamp.LifeFactorHigh)} times its rated life"),
            ("base", "must be the same as the old one")
        );
    }

    /// <summary>What stands on the new lamp: "18 V, 0.25 A".</summary>
    public string Marked => $"{ValueText.Of(Number("volts"), Quantity.AcVolts)}, {ValueText.Of(Number("amps"), Quantity.AcAmps)}";

    /// <summary>The figures of the new lamp, where they are not those of the original.</summary>
    public ImmutableArray<PartFigure> Figures =>
        Problems.IsEmpty && (Number("volts") != OriginalVolts || Number("amps") != OriginalAmps)
            ? [new("volts", Number("volts")), new("amps", Number("amps"))]
            : [];
}
