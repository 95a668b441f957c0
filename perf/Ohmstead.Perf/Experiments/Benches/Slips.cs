using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Benches;

/// <summary>Notes or takes a share of the readings wrongly, each in one of the ways that are possible for it.</summary>
/// <param name="bench">The bench, to read there what a wrong probe or throttle gives.</param>
/// <param name="stateOf">How the unit really stands for a reading.</param>
internal sealed class Slips(ReadingBench bench, Func<ReadingSpec, ReadingState> stateOf, Random dice)
{
    /// <summary>A throttle "at full" that is not: from the first to the second.</summary>
    private const double LeastFull = 0.85;

    private const double MostFull = 0.97;

    /// <summary>Beyond this many limits of the meter's error a slip matters.</summary>
    private const double MatteringLimits = 3;

    private readonly List<TrueSlip> all = [];

    /// <summary>Every slip made.</summary>
    public IReadOnlyList<TrueSlip> All => all;

    /// <summary>Spoils a share of <paramref name="taken"/> in its place.</summary>
    public void Spoil(TakenReading[] taken, double share)
    {
        for (var n = 0; n < taken.Length; n++)
        {
            if (dice.NextDouble() >= share || all.Any(s => s.Id == taken[n].Spec.Id))
                continue;
            foreach (var by in Enum.GetValues<SpoiledBy>().OrderBy(_ => dice.Next()))
                if (Try(taken, n, by))
                    break;
        }
    }

    private bool Try(TakenReading[] taken, int n, SpoiledBy by)
    {
        var clean = taken[n];
        if (by == SpoiledBy.Exchange)
            return Exchange(taken, n);
        var shown = by switch
        {
            SpoiledBy.TimesTen => clean.Value * 10,
            SpoiledBy.Tenth => clean.Value / 10,
            SpoiledBy.Quantity => OtherQuantity(clean.Spec),
            SpoiledBy.Place => ElsewhereOf(clean.Spec),
            _ => NotQuiteFull(clean.Spec),
        };
        if (shown is not { } value || double.IsInfinity(clean.Value) && double.IsInfinity(value))
            return false;
        taken[n] = ReadingBench.Noted(clean.Spec, value, clean.State);
        Add(clean, taken[n], by, "");
        return true;
    }

    private bool Exchange(TakenReading[] taken, int n)
    {
        var clean = taken[n];
        int[] others =
        [
            .. Enumerable
                .Range(0, taken.Length)
                .Where(k => k != n && taken[k].Spec.Quantity == clean.Spec.Quantity && all.All(s => s.Id != taken[k].Spec.Id)),
        ];
        if (others.Length == 0)
            return false;
        var k = others[dice.Next(others.Length)];
        var other = taken[k];
        (taken[n], taken[k]) = (
            ReadingBench.Noted(clean.Spec, other.Value, clean.State),
            ReadingBench.Noted(other.Spec, clean.Value, other.State)
        );
        Add(clean, taken[n], SpoiledBy.Exchange, other.Spec.Id);
        Add(other, taken[k], SpoiledBy.Exchange, clean.Spec.Id);
        return true;
    }

    private void Add(TakenReading clean, TakenReading noted, SpoiledBy by, string with)
    {
        var isOneOpen = clean.Outcome != noted.Outcome;
        var moved = Math.Abs(noted.Value - clean.Value);
        var matters = isOneOpen || moved > MatteringLimits * bench.Meter.For(clean.Spec.Quantity).LimitAt(clean.Value);
        all.Add(new TrueSlip(clean, by, with, matters));
    }

    private double? OtherQuantity(ReadingSpec spec) =>
        spec.Quantity switch
        {
            Quantity.AcVolts => Show(spec with { Quantity = Quantity.DcVolts }),
            Quantity.DcVolts when spec.State.Source is { IsDirect: false } => Show(spec with { Quantity = Quantity.AcVolts }),
            _ => null,
        };

    /// <summary>One probe on a terminal at which readings of the same quantity and the same access are taken.</summary>
    private double? ElsewhereOf(ReadingSpec spec)
    {
        if (spec.From.Length == 0)
            return null;
        string[] places =
        [
            .. bench
                .Model.Sheet.Readings.Where(r => r.Quantity == spec.Quantity && r.Access == spec.Access && r.From.Length > 0)
                .SelectMany(r => new[] { r.From, r.To })
                .Distinct()
                .Where(t => t != spec.From && t != spec.To),
        ];
        if (places.Length == 0)
            return null;
        var place = places[dice.Next(places.Length)];
        return Show(dice.Next(2) == 0 ? spec with { From = place } : spec with { To = place });
    }

    private double? NotQuiteFull(ReadingSpec spec)
    {
        var full = spec.State.Controls.Where(c => c.Value.Throttle > 0.99).Select(c => c.Key).Order(StringComparer.Ordinal).ToArray();
        if (full.Length == 0)
            return null;
        var at = LeastFull + ((MostFull - LeastFull) * dice.NextDouble());
        var state = stateOf(spec);
        return bench.Show(
            spec,
            state with
            {
                Controls = state.Controls.SetItem(full[dice.Next(full.Length)], new ControlPosition(at, "")),
            },
            dice
        );
    }

    private double? Show(ReadingSpec spec) => bench.Show(spec, stateOf(spec), dice);
}
