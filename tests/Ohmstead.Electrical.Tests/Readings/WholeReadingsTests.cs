using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>A reading that is given whole is found among the sheet's by what it is, whatever it is called, or joins them.</summary>
public class WholeReadingsTests
{
    private static readonly TypeSheet Twin = Reference.Twin160;
    private static readonly ReadingSpec Load = Twin.FindReading("left-load")!;
    private static readonly ReadingSpec Low = Twin.FindReading("low-17")!;
    private static readonly ReadingSpec Drop = Twin.FindReading("drop-breaker")!;
    private static readonly ReadingSpec Lamp = Twin.FindReading("lamp-60")!;
    private static readonly ReadingSpec Posts = Twin.FindReading("blades-posts")!;

    private static bool IsSame(ReadingSpec a, ReadingSpec b) =>
        WholeReadings.IsSame(Twin, a, b) is var same && same == WholeReadings.IsSame(Twin, b, a) && same;

    private static ReadingSpec Turned(ReadingSpec r) => r with { From = r.To, To = r.From };

    private static ReadingSpec Fed(ReadingSpec r, Func<SourceSpec, SourceSpec> by) =>
        r with
        {
            State = r.State with { Source = by(r.State.Source!) },
        };

    private static ReadingSpec In(ReadingSpec r, Func<ReadingState, ReadingState> by) => r with { State = by(r.State) };

    [Fact]
    public void Every_reading_of_the_sheet_is_itself_under_any_name_and_no_other() =>
        Assert.All(Twin.Readings, a => Assert.Equal([a.Id], Twin.Readings.Where(b => IsSame(a with { Id = "x" }, b)).Select(b => b.Id)));

    /// <summary>Alternating volts have no sign; direct ones have, and so have ohms where a rectifier may lie in the way.</summary>
    [Fact]
    public void The_leads_may_be_exchanged_where_nothing_has_a_sign()
    {
        Assert.True(IsSame(Load, Turned(Load)));
        Assert.False(IsSame(Drop, Turned(Drop)));
        var ohms = Twin.FindReading("ohms-left")!;
        Assert.False(IsSame(ohms, Turned(ohms)));
        Assert.True(WholeReadings.IsSame(Twin with { Elements = [.. Twin.Elements.Where(e => e is not Rectifier)] }, ohms, Turned(ohms)));
        Assert.False(IsSame(Load, Load with { To = "post-right" }));
        // Amps and watts are read at the source.
        var amps = Twin.FindReading("low-amps")!;
        Assert.True(IsSame(amps, amps with { From = "blade-2", To = "blade-1" }));
        Assert.True(IsSame(amps, amps with { From = "post-5" }));
        Assert.False(IsSame(Load, Load with { Quantity = Quantity.DcVolts }));
    }

    [Fact]
    public void A_source_is_the_same_by_its_terminals_what_it_is_and_its_volts_unless_they_are_low()
    {
        Assert.True(IsSame(Load, Fed(Load, s => s with { From = s.To, To = s.From })));
        Assert.False(IsSame(Load, Fed(Load, s => s with { To = "post-5" })));
        Assert.False(IsSame(Load, Fed(Load, s => s with { Volts = 119 })));
        Assert.False(IsSame(Load, In(Load, s => s with { Source = null })));
        Assert.True(IsSame(Low, Fed(Low, s => s with { Volts = 30 })));
        Assert.False(IsSame(Low, Fed(Low, s => s with { Volts = 30.1 })));
        Assert.False(IsSame(Load, Fed(Load, s => s with { SeriesOhms = 5 })));
        Assert.False(IsSame(Low, Fed(Low, s => s with { Volts = 0, DirectAmps = 1 })));
    }

    [Fact]
    public void A_direct_source_is_the_same_by_its_amps_and_its_sense()
    {
        Assert.True(IsSame(Drop, Fed(Drop, s => s with { })));
        Assert.False(IsSame(Drop, Fed(Drop, s => s with { DirectAmps = 2 * s.DirectAmps })));
        Assert.False(IsSame(Drop, Fed(Drop, s => s with { From = s.To, To = s.From })));
    }

    /// <summary>Within a twentieth of its amps: 0.5 A and 0.525 A are one lamp, 0.5 A and 0.53 A are two.</summary>
    [Theory]
    [InlineData(0.524, true)]
    [InlineData(0.477, true)]
    [InlineData(0.53, false)]
    [InlineData(0.47, false)]
    public void A_lamp_is_the_same_by_its_amps(double amps, bool isSame)
    {
        Assert.Equal(isSame, IsSame(Lamp, Fed(Lamp, s => s with { LampAmps = amps })));
        Assert.False(IsSame(Lamp, Fed(Lamp, s => s with { LampVolts = 0, LampAmps = 0 })));
    }

    [Fact]
    public void What_is_set_strapped_lifted_and_loaded_counts_and_not_the_order_nor_the_ohms()
    {
        Assert.True(IsSame(Load, In(Load, s => s with { Controls = s.Controls.Add("whistle-left", new(double.NaN, "off")) })));
        Assert.True(IsSame(Load, In(Load, s => s with { Controls = s.Controls.Add("throttle-right", new(0, "")) })));
        Assert.False(IsSame(Load, In(Load, s => s with { Controls = s.Controls.Add("whistle-left", new(double.NaN, "first")) })));
        Assert.False(IsSame(Load, In(Load, s => s with { Controls = s.Controls.SetItem("throttle-left", new(0.9, "")) })));
        Assert.False(IsSame(Load, In(Load, s => s with { Controls = s.Controls.Add("no-control", new(0, "")) })));
        Assert.True(IsSame(Posts, In(Posts, s => s with { Joined = [.. s.Joined.Reverse().Select(j => j.Reverse().ToImmutableArray())] })));
        Assert.False(IsSame(Posts, In(Posts, s => s with { Joined = [s.Joined[0]] })));
        var lifted = In(Load, s => s with { Lifted = ["pilot", "w-5"] });
        Assert.True(IsSame(lifted, In(Load, s => s with { Lifted = ["w-5", "pilot"] })));
        Assert.False(IsSame(lifted, Load));
        Assert.True(IsSame(Load, In(Load, s => s with { Loads = [new("post-common", "post-left", 5, 0)] })));
        Assert.False(IsSame(Load, In(Load, s => s with { Loads = [new("post-common", "post-right", 3.6, 0)] })));
        var two = In(Load, s => s with { Loads = s.Loads.Add(new("post-5", "post-common", 9, 0)) });
        Assert.False(IsSame(Load, two));
        Assert.True(IsSame(two, In(two, s => s with { Loads = [.. s.Loads.Reverse()] })));
        Assert.True(IsSame(Load, In(Load, s => s with { Celsius = 40 })));
    }

    private const string Mains = """ "source": { "from": "blade-1", "to": "blade-2", "volts": 120 } """;

    private static Parsed<AdoptedReadings> Read(string readings, bool isOfAnySheet = false, string sheet = "twin-160") =>
        WholeReadings.Read($$"""{ "ohmstead": "readings/1", "sheet": "{{sheet}}", "readings": [ {{readings}} ] }""", Twin, isOfAnySheet);

    [Fact]
    public void One_that_the_sheet_has_is_taken_with_the_loads_and_the_degrees_that_were_really_so()
    {
        var adopted = Read(
            $$"""
            { "id": "left-load", "quantity": "ac-volts", "between": ["post-left", "post-common"], "value": 15,
              "state": { {{Mains}}, "controls": { "throttle-left": 1 }, "loads": [{ "from": "post-left", "to": "post-common", "ohms": 4.2 }], "celsius": 35 } },
            { "id": "low-17", "quantity": "ac-volts", "between": ["post-common", "post-17"], "value": 2,
              "state": { "source": { "from": "blade-1", "to": "blade-2", "volts": 14 } } },
            { "id": "blades", "value": 4.1 }
            """
        ).Required;
        Assert.Same(Twin, adopted.Sheet);
        var (load, low) = (adopted.Readings.Readings[0], adopted.Readings.Readings[1]);
        Assert.Equal((4.2, 35.0), (load.State.Loads.Single().Ohms, load.State.Celsius));
        Assert.Equal((14.0, 20.0), (low.State.Source!.Volts, low.State.Celsius));
        Assert.Equal(["left-load", "low-17", "blades"], adopted.Readings.Readings.Select(r => r.Spec.Id));
    }

    [Fact]
    public void What_stands_beside_the_value_goes_before_what_the_whole_reading_says()
    {
        var read = Read(
            $$"""
            { "id": "left-load", "quantity": "ac-volts", "between": ["post-left", "post-common"], "value": 15, "celsius": 50,
              "loads": [{ "from": "post-left", "to": "post-common", "ohms": 5 }],
              "state": { {{Mains}}, "controls": { "throttle-left": 1 }, "loads": [{ "from": "post-left", "to": "post-common", "ohms": 4.2 }], "celsius": 35 } },
            { "id": "low-17", "quantity": "ac-volts", "between": ["post-common", "post-17"], "value": 2, "supplyVolts": 13,
              "state": { "source": { "from": "blade-1", "to": "blade-2", "volts": 14 } } }
            """
        ).Required.Readings.Readings;
        Assert.Equal((5.0, 50.0, 13.0), (read[0].State.Loads.Single().Ohms, read[0].State.Celsius, read[1].State.Source!.Volts));
    }

    /// <summary>On mains a new reading waits for the lamp, on a low supply for the cold gates of ohms; ohms wait for nothing.</summary>
    [Fact]
    public void A_new_one_joins_the_sheet_and_waits_for_what_its_source_asks()
    {
        var sheet = Read(
            $$"""
            { "id": "a", "quantity": "ac-volts", "between": ["post-5", "post-17"], "value": 12, "needs": ["volts-5"], "access": "open", "state": { {{Mains}} } },
            { "id": "b", "quantity": "ac-volts", "between": ["post-5", "post-17"], "value": 1, "state": { "source": { "from": "blade-1", "to": "blade-2", "volts": 12 } } },
            { "id": "c", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 1 }
            """
        ).Required.Sheet;
        Assert.Equal(Twin.Readings.Length + 3, sheet.Readings.Length);
        Assert.Equal(["lamp-60"], sheet.FindReading("a")!.Needs);
        Assert.Equal(["blades", "blades-posts"], sheet.FindReading("b")!.Needs);
        Assert.Empty(sheet.FindReading("c")!.Needs);
        Assert.All(sheet.Readings[^3..], r => Assert.Equal(ReadingSpec.Closed, r.Access));
    }

    [Fact]
    public void One_that_the_sheet_calls_otherwise_is_called_as_in_the_file()
    {
        var adopted = Read(
            $$"""{ "id": "mine", "quantity": "ac-volts", "between": ["post-17", "post-common"], "value": 17, "state": { {{Mains}} } }"""
        ).Required;
        Assert.Equal(Twin.Readings.Length, adopted.Sheet.Readings.Length);
        Assert.Null(adopted.Sheet.FindReading("volts-17"));
        Assert.Equal(Twin.FindReading("volts-17")!.Needs.AsEnumerable(), adopted.Sheet.FindReading("mine")!.Needs);
        Assert.Equal("mine", adopted.Readings.Readings.Single().Spec.Id);
    }

    [Fact]
    public void A_gate_keeps_its_name_and_its_meaning()
    {
        var blades = """{ "id": "mine", "quantity": "ohms", "between": ["blade-1", "blade-2"], "value": 4 }""";
        Assert.Same(Twin, Read(blades).Required.Sheet);
        Assert.Equal("blades", Read(blades).Required.Readings.Readings.Single().Spec.Id);
        foreach (var gate in new[] { "blades", "lamp-60" })
        {
            var other = $$"""{ "id": "{{gate}}", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 4 }""";
            Assert.Equal("$.readings[0].id", Assert.Single(Read(other).Problems).Path);
            var renamed = Read(other, isOfAnySheet: true).Required;
            Assert.Equal($"{gate}-as-read", renamed.Readings.Readings.Single().Spec.Id);
            Assert.Equal(Twin.FindReading(gate), renamed.Sheet.FindReading(gate));
        }
    }

    [Fact]
    public void A_reading_that_nothing_waits_for_gives_its_name_to_another()
    {
        var adopted = Read("""{ "id": "ohms-5", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 4 }""").Required;
        Assert.Equal(Twin.Readings.Length, adopted.Sheet.Readings.Length);
        Assert.Equal("post-17", adopted.Sheet.FindReading("ohms-5")!.To);
    }

    [Fact]
    public void Readings_of_another_sheet_are_taken_only_where_that_is_asked_for()
    {
        const string one = """{ "id": "c", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 1 }""";
        Assert.Equal("$.sheet", Assert.Single(Read(one, sheet: "other").Problems).Path);
        Assert.Equal("twin-160", Read(one, isOfAnySheet: true, sheet: "other").Required.Readings.Sheet);
    }

    [Theory]
    [InlineData("""{ "id": "c", "quantity": "ohms", "between": ["post-5", "nowhere"], "value": 1 }""", "nowhere")]
    [InlineData("""{ "id": "c", "quantity": "ohms", "between": ["nowhere", "post-5"], "value": 1 }""", "nowhere")]
    [InlineData(
        """{ "id": "c", "quantity": "ac-volts", "between": ["post-5", "post-17"], "value": 1, "state": { "source": { "from": "x", "to": "blade-2", "volts": 9 } } }""",
        "names x,"
    )]
    [InlineData(
        """{ "id": "c", "quantity": "ac-volts", "between": ["post-5", "post-17"], "value": 1, "state": { "source": { "from": "blade-1", "to": "x", "volts": 9 } } }""",
        "names x,"
    )]
    [InlineData(
        """{ "id": "c", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 1, "state": { "joined": [["post-5", "x"]] } }""",
        "names x,"
    )]
    [InlineData(
        """{ "id": "c", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 1, "state": { "loads": [{ "from": "x", "to": "post-5", "ohms": 1 }] } }""",
        "names x,"
    )]
    [InlineData(
        """{ "id": "c", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 1, "state": { "lifted": ["x"] } }""",
        "lifts x,"
    )]
    [InlineData(
        """{ "id": "c", "quantity": "ohms", "between": ["post-5", "post-17"], "value": 1, "state": { "controls": { "x": 1 } } }""",
        "x"
    )]
    [InlineData("""{ "id": "c", "quantity": "ohms", "between": ["post-5"], "value": 1 }""", "two terminals")]
    public void What_the_unit_does_not_have_is_refused(string reading, string says)
    {
        var read = Read(reading);
        Assert.Null(read.Value);
        var problem = Assert.Single(read.Problems);
        Assert.Contains(says, $"{problem.Path} {problem.Wrong}", StringComparison.Ordinal);
        Assert.StartsWith("$.readings[0]", problem.Path, StringComparison.Ordinal);
    }
}
