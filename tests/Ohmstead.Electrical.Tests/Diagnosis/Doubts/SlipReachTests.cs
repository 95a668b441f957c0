using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Doubts;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>
/// A slip is told as another place as far as that explains it: what the other readings leave open of the reading, and two limits of its own,
/// beside a tenth of all wrong readings anywhere in 300 limits (common practice, no source; as in <see cref="ElsewhereTests"/>).
/// </summary>
public class SlipReachTests
{
    private const double Chance = 0.02;
    private const double Own = 4;
    private static readonly BenchUnit Unit = Divider();
    private static readonly MeterError Error = Meter.Usual.For(Quantity.AcVolts);

    [Theory]
    [InlineData(-0.05, SlipKind.Place, "b..g")]
    [InlineData(0.05, SlipKind.Unknown, null)]
    public void The_way_is_told_by_what_the_others_leave_open(double beyond, SlipKind kind, string? place)
    {
        var pieces = Noted(0);
        var set = pieces.Fitted(Members.None);
        var open = 1 / SlipView.Of(1, set, pieces.Judge(set.Spread)).At[1].Precision;
        Assert.InRange(open, 0.7, 40);
        // Ten volts over both; each probe has one other place.
        var (variance, share) = (open + Own, 0.1 / 2 * 300 / 0.1);
        var reach = Math.Sqrt(2 * variance * Math.Log(share / Math.Sqrt(2 * Math.PI * variance)));
        var slip = Assert.Single(
            Diagnoser
                .Run(
                    Unit.Model,
                    Noted(reach + beyond).Readings,
                    new DiagnosisOptions
                    {
                        RankNext = false,
                        IsBenchAsNoted = true,
                        WrongReadingChance = Chance,
                        Threads = 1,
                    }
                )
                .Slips
        );
        Assert.Equal(("low", kind, place, (double?)null), (slip.Id, slip.Kind, slip.With, slip.Meant));
    }

    /// <summary>The volts over two resistors as they should be, and of those over one so many limits above these.</summary>
    private static Pieces Noted(double limits)
    {
        var high = Unit.ReadListed("high");
        var noted = Error.FromScale(Error.ToScale(high) + limits);
        return new(Unit, [WireBench.Value(Unit, "high", high), WireBench.Value(Unit, "low", noted)], Chance);
    }

    private static BenchUnit Divider()
    {
        var draft = new SheetDraft();
        foreach (var (id, from, to, ohms) in new[] { ("top", "a", "b", 10), ("middle", "b", "c", 20), ("low", "c", "g", 30) })
            draft = draft.Element(
                "resistor",
                id,
                from,
                to,
                new
                {
                    ohms,
                    spread = new { ohms = 0.03 },
                    faults = new Dictionary<string, double>
                    {
                        ["open"] = 0,
                        ["shorted"] = 0,
                        ["drifted"] = 0,
                    },
                }
            );
        object source = new
        {
            source = new
            {
                from = "a",
                to = "g",
                volts = 12,
            },
        };
        return draft.Reading("high", "ac-volts", ["b", "g"], source).Reading("low", "ac-volts", ["c", "g"], source).Unit();
    }
}
