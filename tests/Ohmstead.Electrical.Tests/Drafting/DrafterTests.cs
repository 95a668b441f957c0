using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.Tests.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Drafting;

/// <summary>Faults and numbers together, from readings of units that the model itself gives.</summary>
public class DrafterTests
{
    private static readonly string Text = OutlineText.Of(OutlineText.Main + "," + OutlineText.Roller);

    private static readonly OutlineKinds Small = OutlineFile.Read(Text).Required;

    private static TypeSheet Wide => Small.Kinds[0].Sheet;

    /// <summary>The true kind: other turns, ohms and core than the outline's, by factors within its doubt.</summary>
    private static readonly UnitModel True = new(
        TypeSheetFile.Read(TypeSheetFile.Write(Wide)).Required with
        {
            Elements =
            [
                .. Wide.Elements.Select(e =>
                    e switch
                    {
                        Winding { Id: "primary" } w => w with { Ohms = w.Ohms * 1.2 },
                        Winding { Id: "main" } w => w with
                        {
                            Turns = w.Turns * 1.03,
                            Taps = [w.Taps[0] with { Turn = w.Taps[0].Turn * 1.05 }, w.Taps[1] with { Turn = w.Taps[1].Turn * 0.98 }],
                        },
                        _ => e,
                    }
                ),
            ],
        }
    );

    private static string Readings(string[] ids, params string[] faults)
    {
        var catalogue = new FaultCatalogue(True);
        Fault[] there =
        [
            .. faults.Select(f =>
                Fault.TryParse(f, catalogue, out var fault, out _, out var why) ? fault : throw new InvalidOperationException(why)
            ),
        ];
        var values = True.Nominal.Copy();
        foreach (var f in there)
            f.ApplyTo(values);
        var taken = ids.Select(id =>
        {
            var spec = True.Sheet.FindReading(id)!;
            var value = new ReadingSolver().Solve(new FaultedCircuits(True, spec, spec.State).For(there), values).Value!.Value;
            return string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "id": "{{id}}", "value": {{(value > 2e7 && spec.Quantity == Quantity.Ohms ? "\"OL\"" : value.ToString("R", CultureInfo.InvariantCulture))}} }"""
            );
        });
        return $$"""{ "ohmstead": "readings/1", "sheet": "x", "readings": [ {{string.Join(", ", taken)}} ] }""";
    }

    private static readonly string[] Usual =
    [
        "blades",
        "ohms-b",
        "ohms-c",
        "ohms-t",
        "amps-idle",
        "watts-idle",
        "volts-b",
        "volts-c",
        "t-full",
        "t-low",
        "t-load",
        "load-c",
    ];

    private static Draft Run(params string[] readings)
    {
        var sheet = Wide;
        var units = readings.Select(r => WholeReadings.Read(r, sheet).Required.Readings).ToImmutableArray();
        return Drafter.Run([new KindReadings(Small.Kinds[0], sheet, units)], new DiagnosisOptions());
    }

    private static double Of(Draft draft, string path) => draft.Values.Single(v => v.Path == path).Value;

    private static readonly Lazy<Draft> Worn = new(() => Run(Readings(Usual, "roller-t:worn=3")));

    [Fact]
    public void The_numbers_of_a_faulty_unit_are_found_beside_its_fault()
    {
        var draft = Worn.Value;
        Assert.Contains(draft.Units[0].Sets[0].Faults, f => f.Mode.Name == "roller-t:worn" && f.Size is > 2.5 and < 3.5);
        var wide = Wide.Windings.Single(w => w.Id == "main");
        // No-load volts fix the ratios, each tap by itself: 5 % up, 2 % down.
        Assert.InRange(Of(draft, "elements.main.tap-b.turn") / wide.Taps[0].Turn, 1.035, 1.055);
        Assert.InRange(Of(draft, "elements.main.tap-c.turn") / wide.Taps[1].Turn, 0.975, 0.99);
        Assert.InRange(Of(draft, "elements.primary.ohms") / Wide.Windings.Single(w => w.Id == "primary").Ohms, 1.12, 1.2);
        // The load reading is that of the worn roller: the contact stays what it was, within a tenth of its doubt.
        Assert.InRange(Of(draft, "elements.roller-t.contactOhms") / 0.09, 0.9, 1.1);
        Assert.Equal(Origin.Measured, draft.Values.Single(v => v.Path == "elements.primary.ohms").Origin);
        Assert.Equal(["blades"], draft.Values.Single(v => v.Path == "elements.primary.ohms").From);
        Assert.Equal(Origin.Assumed, draft.Values.Single(v => v.Path == "elements.roller-t.contactOhms").Origin);
        Assert.Empty(draft.Units[0].SetAside);
    }

    [Fact]
    public void The_drafted_sheet_keeps_the_units_spread_and_narrows_the_doubt_about_the_kind()
    {
        var (before, after) = (new UnitModel(Wide), new UnitModel(Worn.Value.Sheet));
        foreach (var (was, now) in before.Parameters.Zip(after.Parameters))
        {
            Assert.Equal(was.UnitSigma, now.UnitSigma, 4);
            Assert.True(now.KindSigma <= was.KindSigma * 1.0001, was.Path);
        }
        double Left(string path) =>
            after.Parameters.Single(p => p.Path == path).KindSigma / before.Parameters.Single(p => p.Path == path).KindSigma;
        Assert.True(Left("elements.primary.ohms") < 0.45);
        Assert.True(Left("elements.main.turns") < 0.4);
        Assert.True(Left("elements.roller-t.contactOhms") > 0.9);
        // Limits of checks come from the plate, never from the unit's own reading.
        Assert.Equal(Wide.FindReading("blades")!.Limits, Worn.Value.Sheet.FindReading("blades")!.Limits);
        Assert.Single(Worn.Value.Sheet.DraftedFrom);
        Assert.Empty(SheetRemarks.Of(Worn.Value.Sheet));
    }

    /// <summary>
    /// One value, one reading: the median moves by τ²/(τ² + (σ² + m²)/n) of the way, and √(1 − that) of its doubt is left; σ the units'
    /// 0.08, τ 0.25, m the meter's error (0.8 % + 0.05 Ω, rectangular) in the logarithm.
    /// </summary>
    [Theory]
    [InlineData(1)]
    [InlineData(4)]
    public void Medians_move_towards_the_units_by_their_share(int n)
    {
        var model = new UnitModel(Wide);
        var spec = Wide.FindReading("blades")!;
        var primary = Wide.Windings.Single(w => w.Id == "primary").Ohms;
        const double rest = 0.104;
        var value = (primary * 1.15) + rest;
        var unit = new UnitReadings(
            "x",
            120,
            null,
            Meter.Usual,
            [new TakenReading(spec, Outcome.Value, value, [], "", "", spec.State)],
            []
        );
        var found = Fit.Run(model, [.. Enumerable.Repeat(unit, n)]).Parameters.Single(p => p.Path == "elements.primary.ohms");
        var m = ((0.008 * value) + 0.05) / Math.Sqrt(3) / primary;
        var share = 0.0625 / (0.0625 + (((0.08 * 0.08) + (m * m)) / n));
        // The cords and joints take a few thousandths of it; four units alike also narrow the spread a little.
        Assert.Equal(share * Math.Log(1.15), Math.Log(found.Value / primary), 0.006);
        Assert.Equal(0.25 * Math.Sqrt(1 - share), found.StandardError / found.Value, 0.01);
        Assert.True(found.Determined);
    }

    [Fact]
    public void A_reading_that_nothing_explains_is_set_aside_and_named()
    {
        var text = Readings(Usual)
            .Replace("\"id\": \"volts-b\", \"value\": ", "\"id\": \"volts-b\", \"value\": 4", StringComparison.Ordinal);
        var draft = Run(text);
        var aside = Assert.Single(draft.Units[0].SetAside);
        Assert.Equal("volts-b", aside.Spec.Id);
        Assert.InRange(aside.Measured!.Value, 40, 50);
        Assert.InRange(Of(draft, "elements.main.tap-b.turn") / Wide.Windings.Single(w => w.Id == "main").Taps[0].Turn, 0.95, 1.05);
    }

    [Fact]
    public void What_was_taken_is_not_wanted_again()
    {
        var wide = Wanted.Of(new UnitModel(Wide), []);
        Assert.Contains(
            wide,
            w => w.Spec.Id == "blades" && w.Fixes.Contains("elements.primary.ohms") && w.RelativeErrorAfter is > 0.05 and < 0.12
        );
        Assert.DoesNotContain(Worn.Value.Wants, w => Usual.Contains(w.Spec.Id));
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(40, 1)]
    // Two unit bells 2 apart: what a binary antipodal channel at 0 dB carries, 0.486 bit (information theory's tables, from memory).
    [InlineData(2, 0.486)]
    public void Information_about_two_kinds_is_that_of_two_bells(double apart, double bits) =>
        Assert.Equal(bits, KindDiscrimination.Information([0.5, 0.5], [(0, 1), (apart, 1)]), 0.002);

    [Fact]
    public void Kinds_are_weighed_by_the_readings_and_told_apart_by_others()
    {
        var kinds = OutlineFile
            .Read(
                OutlineText.Of(
                    OutlineText.Main
                        + ","
                        + OutlineText.Roller
                        + """, { "block": "breaker", "in": { "oneOf": ["primary", "throttle"] }, "amps": 1.5 }"""
                )
            )
            .Required.Kinds;
        // 0.47 Ω in the primary are a small share of 4.2 Ω; 0.2 Ω behind the throttle double what lies to it.
        var readings = Readings(["ohms-t", "ohms-c", "t-full", "t-load", "volts-c", "load-c"])
            .Replace("\"id\": \"t-load\"", "\"supplyVolts\": 120, \"id\": \"t-load\"", StringComparison.Ordinal);
        KindReadings Taken(OutlineKind k, string text) =>
            new(k, k.Sheet, [WholeReadings.Read(text, k.Sheet, isOfAnySheet: true).Required.Readings]);
        var draft = Drafter.Run([.. kinds.Select(k => Taken(k, readings))], new DiagnosisOptions());
        Assert.Equal(1, draft.Candidates.Sum(c => c.Probability), 9);
        Assert.Equal("primary", draft.Kind.Choices["blocks[2].in"]);
        Assert.True(draft.Candidates[0].Probability > 0.6);
        var none = Drafter.Run([.. kinds.Select(k => new KindReadings(k, k.Sheet, []))], new DiagnosisOptions());
        Assert.All(none.Candidates, c => Assert.Equal(0.5, c.Probability, 9));
        Assert.Contains(none.Discriminating, t => t.Id == "ohms-t" && t.Bits > 0.3 && t.Between.Length == 2);
        Assert.Equal(1, none.Discriminating.Single(t => t.Id == "look:blocks[2].in").Bits, 6);
    }
}
