using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Experiments.Benches;

namespace Ohmstead.Electrical.Tests.Experiments;

public class SlipsTests
{
    private const double Share = 0.08;
    private const int Units = 60;
    private static readonly UnitModel Twin = new(Reference.Twin160);

    private static readonly (DrawnUnit Clean, DrawnUnit Slipped)[] Drawn =
    [
        .. Enumerable
            .Range(1, Units)
            .Select(seed => (DrawnUnit.Draw(Twin, seed), DrawnUnit.Draw(Twin, seed, bench: new Bench { SlipShare = Share }))),
    ];

    [Fact]
    public void The_share_that_slips_is_the_share_asked_for_and_the_partners_of_exchanges()
    {
        var readings = Drawn.Sum(d => d.Slipped.Readings.Readings.Length);
        var slips = Drawn.SelectMany(d => d.Slipped.Slips).ToArray();
        // Each exchange takes a partner with it: the readings that slipped of themselves are the others and half of those.
        var ofThemselves = slips.Count(s => s.By != SpoiledBy.Exchange) + (slips.Count(s => s.By == SpoiledBy.Exchange) / 2.0);
        // Binomial: four standard deviations of chance, and a little less than the share because a partner does not slip again.
        var chance = 4 * Math.Sqrt(Share * (1 - Share) / readings);
        Assert.InRange(ofThemselves / readings, (Share * 0.95) - chance, Share + chance);
    }

    [Fact]
    public void Every_way_to_slip_occurs() =>
        Assert.Equal(Enum.GetValues<SpoiledBy>(), Drawn.SelectMany(d => d.Slipped.Slips).Select(s => s.By).Distinct().Order());

    [Fact]
    public void What_did_not_slip_is_as_it_was()
    {
        foreach (var (clean, slipped) in Drawn)
        foreach (var (one, other) in clean.Readings.Readings.Zip(slipped.Readings.Readings))
            if (slipped.Slips.SingleOrDefault(s => s.Id == one.Spec.Id) is { } slip)
                Assert.Equal(one.Value, slip.Clean.Value);
            else
                Assert.Equal(one.Value, other.Value);
    }

    [Fact]
    public void A_slip_shows_what_its_kind_says_and_matters_beyond_three_limits()
    {
        foreach (var (_, unit) in Drawn)
        foreach (var slip in unit.Slips)
        {
            var noted = unit.Readings.Readings.Single(r => r.Spec.Id == slip.Id);
            var clean = slip.Clean.Value;
            switch (slip.By)
            {
                case SpoiledBy.TimesTen:
                    Assert.Equal(clean * 10, noted.Value, 1e-9 * Math.Abs(clean));
                    break;
                case SpoiledBy.Tenth:
                    Assert.Equal(clean / 10, noted.Value, 1e-9 * Math.Abs(clean));
                    break;
                case SpoiledBy.Exchange:
                    var other = unit.Slips.Single(s => s.Id == slip.With);
                    Assert.Equal(
                        (other.Clean.Value, slip.Id, slip.Clean.Spec.Quantity),
                        (noted.Value, other.With, other.Clean.Spec.Quantity)
                    );
                    break;
                case SpoiledBy.Control:
                    Assert.Contains(slip.Clean.Spec.State.Controls, c => c.Value.Throttle == 1);
                    break;
                case SpoiledBy.Quantity:
                    Assert.Contains(slip.Clean.Spec.Quantity, new[] { Quantity.AcVolts, Quantity.DcVolts });
                    break;
                default:
                    Assert.NotEmpty(slip.Clean.Spec.From);
                    break;
            }
            var limit = DrawnUnit.CaseMeter.For(slip.Clean.Spec.Quantity).LimitAt(clean);
            if (double.IsFinite(clean) && double.IsFinite(noted.Value))
                Assert.Equal(Math.Abs(noted.Value - clean) > 3 * limit, slip.Matters);
            else
                Assert.True(slip.Matters);
        }
    }

    [Fact]
    public void A_throttle_that_is_not_quite_at_full_reads_a_little_low_with_nothing_connected()
    {
        // Turn 16 + x·42 of 60, x from 0.85 to 0.97: 98 % to 89 % of the volts at turn 58.
        foreach (var (_, unit) in Drawn.Where(d => d.Slipped.Truth.Count == 0))
        foreach (var slip in unit.Slips.Where(s => s is { By: SpoiledBy.Control, Id: "left-full" or "right-full" }))
        {
            var ratio = unit.Readings.Readings.Single(r => r.Spec.Id == slip.Id).Value / slip.Clean.Value;
            Assert.InRange(ratio, 0.87, 0.99);
        }
    }
}
