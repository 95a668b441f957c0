using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>A roller or shoe: what is left of it, its flat, its contact, and what that takes (<see cref="Roller"/>).</summary>
public sealed record RollerMeasure(ImmutableArray<MeasureField> Fields) : PartMeasure(Fields)
{
    /// <summary>A usual roller is so large when new [mm]. Common practice, no source.</summary>
    private const double NewMillimetres = 9.5;

    internal static RollerMeasure Of(TypeSheet own, Slider slider, double? contactOhms)
    {
        // A side is twice what one contact that bridges two turns is: both lie in parallel.
        var side = (slider.BridgesTurns > 0 ? 2 : 1) * (contactOhms ?? slider.ContactOhms);
        return new([
            new("new", "Diameter when new", "mm", 1, 60, ShopEdit.Show(NewMillimetres)),
            new("now", "Diameter now", "mm", 0.1, 60, ""),
            new("flat", "Flat, across", "mm, 0 for none", 0, 60, "0"),
            new("turn", "Volts between two turns", "V", 0, 10, ShopEdit.Show(Math.Round(TurnVolts(own), 3))),
            new("side", "Contact of one side", "Ω", 0.0001, 1000, ShopEdit.Show(Math.Round(side, 4))),
        ]);
    }

    /// <summary>The line over the turns of the winding that it feeds [V]; the usual third of a volt where the sheet has none.</summary>
    private static double TurnVolts(TypeSheet own)
    {
        var live = LiveSide.Of(own);
        return own.Windings.FirstOrDefault(w => live.Contains(w.From)) is { Turns: > 0 } primary ? own.SupplyVolts / primary.Turns : 0.35;
    }

    /// <inheritdoc/>
    protected override IEnumerable<string> Beyond()
    {
        if (Fields.Any(f => ShopEdit.Number(f.Text, f.Least, f.Most).Problem.Length > 0))
            yield break;
        if (Number("now") > Number("new"))
            yield return "Diameter now: a roller only wears down. It cannot be above the new one.";
        if (Number("flat") > Number("now"))
            yield return "Flat: it is no wider than the roller.";
    }

    /// <inheritdoc/>
    protected override MeasureVerdict Answer()
    {
        var answer = new Roller(
            Number("new"),
            Number("now"),
            Number("flat"),
            Number("turn"),
            0,
            Number("side"),
            [2.5, 5],
            RollerLimits.Usual
        ).Answer();
        var left = $"{ValueText.Plain(Math.Round(answer.RemainingPercent))} % of its size left";
        string Said(string why) =>
            why switch
            {
                "worn" => left,
                "flat" => $"a flat of {ValueText.Plain(Number("flat"))} mm",
                "contact" => $"poor contact, {ValueText.Of(Number("side"), Quantity.Ohms)} a side",
                _ => $"{ValueText.Of(answer.LoopWatts, Quantity.Watts)} of heat in the loop of two turns",
            };
        return From(
            answer,
            answer.Verdict switch
            {
                "renew" => DecidedAct.Replace,
                "watch" => DecidedAct.Watch,
                _ => DecidedAct.Leave,
            },
            answer.Why.IsEmpty ? left : string.Join(", ", answer.Why.Select(Said)),
            ("left of its size", $"{ValueText.Plain(Math.Round(answer.RemainingPercent))} %"),
            ("the arm sinks", $"{ValueText.Plain(Math.Round(answer.ArmSinksMillimetres, 2))} mm"),
            ("loop of two turns", $"{ValueText.Of(answer.LoopAmps, Quantity.AcAmps)}, {ValueText.Of(answer.LoopWatts, Quantity.Watts)}"),
            (
                "lost at 5 A",
                $"{ValueText.Of(answer.Loads[1].OneTurnVoltsLost, Quantity.AcVolts)}, {ValueText.Of(answer.Loads[1].OneTurnWatts, Quantity.Watts)}"
            )
        );
    }
}
