using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Readings are the same by what they say: an answer to the one is an answer to the other, and to nothing that differs in any figure.</summary>
public class UnitReadingsTests
{
    private static readonly TypeSheet Sheet = Reference.Twin160;

    private static TakenReading Taken(string id, double value, params double[] jumps) =>
        new(
            Sheet.FindReading(id)!,
            jumps.Length > 0 ? Outcome.Jumps : Outcome.Value,
            value,
            [.. jumps],
            "why",
            "",
            Sheet.FindReading(id)!.State with
            {
                Controls = Sheet.FindReading(id)!.State.Controls.SetItem("throttle-left", new(0.5, "")),
                Loads = [new("post-left", "post-common", 3.6, 0)],
                Lifted = ["pilot"],
                Joined =
                [
                    ["post-5", "post-17"],
                    ["post-left", "post-right"],
                ],
            }
        );

    /// <summary>Made from the ground up each time: nothing is the same object.</summary>
    private static UnitReadings Made() =>
        new(
            Sheet.Id,
            121,
            2,
            new Meter(Meter.Usual.Errors.SetItem(Quantity.Watts, new(1, 1, 0, 0))),
            [Taken("left-load", 15), Taken("blades", 0, 4, double.PositiveInfinity)],
            [new(Sheet.Observations[0], true)]
        );

    private static UnitReadings First(Func<TakenReading, TakenReading> change) =>
        Made() is var made ? made with { Readings = made.Readings.SetItem(0, change(made.Readings[0])) } : null!;

    private static UnitReadings In(Func<ReadingState, ReadingState> change) => First(r => r with { State = change(r.State) });

    [Fact]
    public void What_says_the_same_is_the_same()
    {
        var (one, other) = (Made(), Made());
        Assert.True(one.Equals(other) && other.Equals(one) && one.Equals(one));
        Assert.Equal(one.GetHashCode(), other.GetHashCode());
        Assert.False(one.Equals(null));
        Assert.Equal(In(s => s with { }), one);
    }

    [Fact]
    public void What_differs_in_one_place_only_is_another()
    {
        UnitReadings[] others =
        [
            Made() with
            {
                Sheet = "other",
            },
            Made() with
            {
                SupplyVolts = 120,
            },
            Made() with
            {
                ExpectedFaults = null,
            },
            Made() with
            {
                Meter = Meter.Usual,
            },
            Made() with
            {
                Meter = new(Made().Meter.Errors.Remove(Quantity.Ohms)),
            },
            Made() with
            {
                Readings = [Made().Readings[0]],
            },
            Made() with
            {
                Readings = [.. Made().Readings.Reverse()],
            },
            Made() with
            {
                Symptoms = [],
            },
            Made() with
            {
                Symptoms = [new(Sheet.Observations[0], false)],
            },
            Made() with
            {
                Doubts = CheckDoubts.None with { LeadOhms = 0.3 },
            },
            Made() with
            {
                Doubts = CheckDoubts.None with { Readings = ["blades"] },
            },
            Made() with
            {
                Readings = [Made().Readings[0], Taken("blades", 0, 4, 5)],
            },
            First(r => r with { Outcome = Outcome.NotTaken }),
            First(r => r with { WaivedBy = "J." }),
            First(r => r with { Instead = "looked" }),
            In(s => s with { Source = null }),
            In(s => s with { Controls = s.Controls.SetItem("throttle-left", new(0.6, "")) }),
            In(s => s with { Controls = s.Controls.Add("whistle-left", new(double.NaN, "first")) }),
            In(s => s with { Controls = s.Controls.Remove("throttle-left").Add("throttle-right", new(0.5, "")) }),
            In(s => s with { Loads = [] }),
            In(s => s with { Joined = [s.Joined[0]] }),
            In(s => s with { Joined = [s.Joined[0], ["post-left", "post-5"]] }),
        ];
        Assert.All(others, other => Assert.False(Made().Equals(other) || other.Equals(Made())));
    }

    [Fact]
    public void The_meter_of_a_reading_is_its_own_where_it_has_one()
    {
        var own = new MeterError(9, 9, 0, 0);
        Assert.Equal(own, Made().ErrorOf(Made().Readings[0] with { OwnError = own }));
        Assert.Equal(Meter.Usual.For(Quantity.AcVolts), Made().ErrorOf(Made().Readings[0]));
        Assert.True(Made().Readings[0].IsTaken);
        Assert.False((Made().Readings[0] with { Outcome = Outcome.NotTaken }).IsTaken);
    }
}
