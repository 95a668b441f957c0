using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>Readings that come from no file are refused in the words of one; two that say the same are equal.</summary>
public class ReadingsCheckTests
{
    private static readonly TypeSheet Sheet = Reference.Twin160;

    private static UnitReadings Read(string more = "", string meter = "") =>
        ReadingsFile
            .Read(
                $$"""
                { "ohmstead": "readings/1", "sheet": "twin-160", "supplyVolts": 118, {{meter}}
                  "readings": [ { "id": "low-17", "value": 1.7 }, { "id": "left-load", "value": 15, "celsius": 40, "loads": [ { "from": "post-left", "to": "post-common", "ohms": 4 } ] },
                                { "id": "blades", "value": { "jumps": [0.4, "OL"] } }{{more}} ] }
                """,
                Sheet
            )
            .Required;

    private static UnitReadings With(UnitReadings readings, int n, Func<TakenReading, TakenReading> change) =>
        readings with
        {
            Readings = readings.Readings.SetItem(n, change(readings.Readings[n])),
        };

    [Fact]
    public void What_a_file_may_hold_has_no_problem() => Assert.Empty(ReadingsCheck.Run(Sheet, Read()));

    [Theory]
    [InlineData(30, true)]
    [InlineData(30.01, false)]
    public void A_low_supply_never_gives_more_than_30_volts(double volts, bool isSound)
    {
        // 30 V: docs/formats.md, the limit of a low source.
        var fed = With(Read(), 0, r => r with { State = r.State with { Source = r.State.Source! with { Volts = volts } } });
        var file = ReadingsFile.Read(
            FormattableString.Invariant(
                $$"""{ "ohmstead": "readings/1", "readings": [ { "id": "low-17", "value": 1.7, "supplyVolts": {{volts}} } ], "sheet": "twin-160" }"""
            ),
            Sheet
        );
        Assert.Equal(file.Problems, ReadingsCheck.Run(Sheet, fed));
        Assert.Equal(isSound, file.IsSound);
    }

    [Fact]
    public void A_load_hangs_on_the_circuit_and_a_control_is_one_of_the_sheet()
    {
        var taken = With(
            Read(),
            1,
            r =>
                r with
                {
                    State = r.State with
                    {
                        Loads = [new("post-left", "nowhere", 4, 0)],
                        Controls = r.State.Controls.Add("none", new(0.5, "")),
                    },
                }
        );
        Assert.Equal(["$.readings[1].controls.none", "$.readings[1].loads"], ReadingsCheck.Run(Sheet, taken).Select(p => p.Path));
    }

    public static TheoryData<int> Differences { get; } = [.. Enumerable.Range(0, Different.Length)];

    private static Func<UnitReadings, UnitReadings>[] Different =>
        [
            r => r with { SupplyVolts = 119 },
            r => r with { ExpectedFaults = 1 },
            r => r with { Meter = new(r.Meter.Errors.SetItem(Quantity.Watts, new(1, 2, 0, 0))) },
            r => r with { Readings = r.Readings.RemoveAt(2) },
            r => r with { Readings = [r.Readings[1], r.Readings[0], r.Readings[2]] },
            r => r with { Symptoms = [new(Sheet.Observations[0], true)] },
            r => r with { Doubts = new([], 0.2) },
            r => r with { Doubts = new(["blades"], 0) },
            r => With(r, 0, t => t with { Value = 1.71 }),
            r => With(r, 0, t => t with { Why = "so" }),
            r => With(r, 0, t => t with { OwnError = new(1, 1, 0, 0) }),
            r => With(r, 0, t => t with { Spec = Sheet.FindReading("low-5")! }),
            r => With(r, 1, t => t with { State = t.State with { Celsius = 41 } }),
            r => With(r, 1, t => t with { State = t.State with { Loads = [new("post-left", "post-common", 4.1, 0)] } }),
            r => With(r, 1, t => t with { State = t.State with { Controls = t.State.Controls.SetItem("throttle-left", new(0.9, "")) } }),
            r => With(r, 1, t => t with { State = t.State with { Lifted = ["cord-1"] } }),
            r =>
                With(
                    r,
                    1,
                    t =>
                        t with
                        {
                            State = t.State with
                            {
                                Joined =
                                [
                                    ["A", "U"],
                                ],
                            },
                        }
                ),
            r => With(r, 1, t => t with { State = t.State with { Source = t.State.Source! with { Volts = 121 } } }),
            r => With(r, 2, t => t with { JumpValues = [0.4, 7] }),
        ];

    [Fact]
    public void The_same_file_read_twice_says_the_same()
    {
        var (first, again) = (Read(), Read());
        Assert.NotSame(first, again);
        Assert.Equal(first, again);
        Assert.Equal(first.GetHashCode(), again.GetHashCode());
    }

    [Theory]
    [MemberData(nameof(Differences))]
    public void One_thing_read_otherwise_is_another_answer(int n)
    {
        var readings = Read();
        Assert.NotEqual(readings, Different[n](readings));
        // Told as well as not told; the order of writing does not matter.
        Assert.Equal(Different[n](readings), Different[n](Read()));
    }
}
