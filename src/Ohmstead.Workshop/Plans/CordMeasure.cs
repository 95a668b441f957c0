using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>A new cord: does it carry the amps, and does it go through eyelet and grommet (<see cref="Cord"/>)?</summary>
public sealed record CordMeasure(ImmutableArray<MeasureField> Fields, double SupplyVolts) : PartMeasure(Fields)
{
    private const double MetresInAFoot = 0.3048;

    /// <summary>What a unit without a plate is taken to draw [A].</summary>
    private const double UsualAmps = 1.5;

    internal static CordMeasure Of(TypeSheet own) =>
        new(
            [
                new("gauge", "Gauge", "AWG", 10, 24, "18"),
                new("feet", "Length", "ft", 0.1, 100, "6"),
                new(
                    "amps",
                    "Amps it carries",
                    "A",
                    0,
                    50,
                    ShopEdit.Show(Math.Round(own.InputWatts > 0 ? own.InputWatts / own.SupplyVolts : UsualAmps, 2))
                ),
                new("around", "Warmth around it", "°C", -20, 59, "40"),
                new("eyelet", "Eyelet, bore", "mm", 0, 50, "") { IsOptional = true },
                new("outside", "Cord, outside", "mm", 0, 50, "") { IsOptional = true },
                new("grommet", "Grommet, bore", "mm", 0, 50, "") { IsOptional = true },
            ],
            own.SupplyVolts
        );

    /// <inheritdoc/>
    protected override IEnumerable<string> Beyond() =>
        Fields[0] is var gauge
        && ShopEdit.Number(gauge.Text, gauge.Least, gauge.Most) is { Problem: "", Value: var typed }
        && typed != Math.Floor(typed)
            ? ["Gauge: a whole number, such as 18."]
            : [];

    /// <inheritdoc/>
    protected override MeasureVerdict Answer()
    {
        var gauge = (int)Number("gauge");
        var answer = new Cord(
            Cord.AreaOf(gauge),
            Cord.TableAmps(gauge),
            Number("feet") * MetresInAFoot,
            Number("amps"),
            SupplyVolts,
            60,
            Number("around"),
            60,
            0.75,
            Optional("eyelet"),
            Optional("outside"),
            Optional("grommet"),
            "not looked at",
            false
        ).Answer();
        var size = $"{ValueText.Plain(gauge)} AWG, {ValueText.Plain(Number("feet"))} ft";
        return From(
            answer,
            answer.Fit ? DecidedAct.Replace : DecidedAct.Open,
            answer.Fit ? $"{size} fits" : $"not {size}: {string.Join(", ", answer.Why.Select(Said))}",
            ("carries here", answer.AmpacityAmps is { } amps ? ValueText.Of(amps, Quantity.AcAmps) : "not known"),
            ("drops", $"{ValueText.Of(answer.DropVolts, Quantity.AcVolts)}, {ValueText.Of(answer.CordWatts, Quantity.Watts)}"),
            (
                "eyelet",
                answer.EyeletSpareMillimetres is not { } spare ? "not measured"
                : spare < 0 ? $"{ValueText.Plain(Math.Round(-spare, 2))} mm too tight"
                : $"{ValueText.Plain(Math.Round(spare, 2))} mm to spare"
            )
        );
    }

    private static string Said(string why) =>
        why switch
        {
            "eyelet" => "the strands do not go through the eyelet",
            "grommet" => "it does not go through the grommet",
            _ => why,
        };
}
