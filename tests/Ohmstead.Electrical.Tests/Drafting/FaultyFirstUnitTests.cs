using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Tests.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Drafting;

/// <summary>
/// A type sheet that was made from a unit with a fault, and one that was copied with wrong numbers. The units are solved by the model
/// itself: what is asked is the order of what is said, not how sure.
/// </summary>
public class FaultyFirstUnitTests
{
    private static readonly OutlineKind Kind = OutlineText.Kind(
        OutlineText.Of(OutlineText.Main + "," + OutlineText.Roller + """, { "block": "breaker", "in": "common", "amps": 7 }""")
    );

    /// <summary>What a person reads in a first half hour with the case closed.</summary>
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
        "load-b",
        "load-c",
    ];

    /// <summary>The type as it really is: off the outline by what an outline does not know.</summary>
    private static TypeSheet True { get; } =
        Changed(Kind.Sheet, primaryOhms: 0.85, mainOhms: 1.2, mainTurns: 1.02, tapB: 0.97, loss: 1.15, excitation: 0.8);

    private static TypeSheet Changed(
        TypeSheet sheet,
        double primaryOhms,
        double mainOhms,
        double mainTurns,
        double tapB,
        double loss,
        double excitation
    ) =>
        TypeSheetFile.Read(TypeSheetFile.Write(sheet)).Required with
        {
            Cores =
            [
                .. sheet.Cores.Select(c =>
                    c with
                    {
                        LossOhms = c.LossOhms * loss,
                        Excitation = [.. c.Excitation.Select(p => (p.Volts, p.Amps * excitation))],
                    }
                ),
            ],
            Elements =
            [
                .. sheet.Elements.Select(e =>
                    e switch
                    {
                        Winding { Id: "primary" } w => w with { Ohms = w.Ohms * primaryOhms },
                        Winding { Id: "main" } w => w with
                        {
                            Ohms = w.Ohms * mainOhms,
                            Turns = w.Turns * mainTurns,
                            Taps = [.. w.Taps.Select(t => t with { Turn = t.Turn * mainTurns * (t.To == "tap-b" ? tapB : 1) })],
                            Sliders =
                            [
                                .. w.Sliders.Select(s => s with { FromTurn = s.FromTurn * mainTurns, ToTurn = s.ToTurn * mainTurns }),
                            ],
                        },
                        _ => e,
                    }
                ),
            ],
        };

    /// <summary>What a meter shows on a unit of the true type, read as one of some sheet.</summary>
    private static UnitReadings Read(TypeSheet sheet, params string[] faults)
    {
        var unit = new BenchUnit(True);
        return new(
            sheet.Id,
            sheet.SupplyVolts,
            2,
            Meter.Usual,
            [
                .. Usual
                    .Select(id => (Spec: sheet.FindReading(id)!, Value: unit.ReadListed(id, faults)))
                    .Select(r => new TakenReading(
                        r.Spec,
                        double.IsInfinity(r.Value) ? Outcome.OverRange : Outcome.Value,
                        r.Value,
                        [],
                        "",
                        "",
                        r.Spec.State
                    )),
            ],
            []
        );
    }

    private static DiagnosisResult Diagnose(TypeSheet sheet, UnitReadings readings) =>
        Diagnoser.Run(new UnitModel(TapAlignment.Of(sheet, readings)), readings, new DiagnosisOptions { RankNext = false });

    /// <summary>Drafted from the unit's own readings, and with the sheet used on that same unit: its numbers did not take the fault in.</summary>
    [Theory]
    [InlineData("roller-t:worn=2")]
    [InlineData("joint-main:resistive=1.5")]
    [InlineData("breaker:resistive=0.8")]
    [InlineData("joint-tap-b:resistive=2")]
    public void A_fault_is_found_on_a_sheet_that_was_made_from_the_faulty_unit(string fault)
    {
        var readings = Read(Kind.Sheet, fault);
        var draft = Drafter.Run([new KindReadings(Kind, Kind.Sheet, [readings])], new DiagnosisOptions());
        var found = Diagnose(draft.Sheet, Read(draft.Sheet, fault));
        var name = fault[..fault.IndexOf('=', StringComparison.Ordinal)];
        // A breaker, a joint and a lead in one path read the same: the first of those that do.
        Assert.Contains(found.Faults.OrderByDescending(f => f.Probability).Take(3), f => f.Mode.Name == name);
        Assert.True(found.SoundProbability < 0.1, FormattableString.Invariant($"{found.SoundProbability}"));
        // And a sound unit of the same type is not blamed for what the first one had.
        var sound = Diagnose(draft.Sheet, Read(draft.Sheet));
        Assert.All(sound.Faults, f => Assert.True(f.Probability < 0.5, f.Mode.Name));
    }

    /// <summary>A sheet of the same parts with the numbers of something else, as sure of them as if they had been measured.</summary>
    [Theory]
    [InlineData(1.3, 0.8, 1.12, 1.1, 1.4, 0.7)]
    [InlineData(0.75, 1.3, 0.9, 1.08, 0.7, 1.4)]
    public void A_copied_sheet_with_wrong_numbers_does_not_fit_before_a_part_is_blamed(
        double primaryOhms,
        double mainOhms,
        double mainTurns,
        double tapB,
        double loss,
        double excitation
    )
    {
        var copied = UnitsOnly(Changed(True, primaryOhms, mainOhms, mainTurns, tapB, loss, excitation));
        var found = Diagnose(copied, Read(copied));
        Assert.Contains(found.Doubts, d => d.About is DoubtAbout.Kind or DoubtAbout.Unit && d.Probability > 0.5);
        Assert.All(found.Faults, f => Assert.True(f.Probability < 0.9, FormattableString.Invariant($"{f.Mode.Name} {f.Probability}")));
        // The same sheet with the right numbers has no such doubt.
        Assert.DoesNotContain(Diagnose(UnitsOnly(True), Read(UnitsOnly(True))).Doubts, d => d.About is DoubtAbout.Kind or DoubtAbout.Unit);
    }

    /// <summary>Turns that are all off together read like another line: that is asked first, and no part is blamed.</summary>
    [Fact]
    public void Turns_that_are_off_together_are_taken_for_the_line_first()
    {
        var copied = UnitsOnly(Changed(True, 1.25, 1.25, 1.06, 0.9, 1, 1.3));
        var found = Diagnose(copied, Read(copied));
        // 120 V / 1.06 = 113.2 V.
        Assert.InRange(Assert.Single(found.Doubts, d => d.About == DoubtAbout.Line).Value, 112.5, 115);
        Assert.All(found.Faults, f => Assert.True(f.Probability < 0.9, FormattableString.Invariant($"{f.Mode.Name} {f.Probability}")));
    }

    /// <summary>As if it had been measured on many units: no doubt about the type is left.</summary>
    private static TypeSheet UnitsOnly(TypeSheet sheet)
    {
        SpreadOverrides None(SpreadOverrides own, SpreadOverrides doubt) =>
            new(
                own.ByName.ToImmutableDictionary(
                    s => s.Key,
                    s => Math.Sqrt(Math.Max(0, Math.Pow(s.Value, 2) - Math.Pow(doubt.Of(s.Key, 0), 2)))
                )
            );
        return sheet with
        {
            Cores = [.. sheet.Cores.Select(c => c with { Spread = None(c.Spread, c.KindError), KindError = SpreadOverrides.None })],
            Elements =
            [
                .. sheet
                    .Elements.Select(e => e with { Spread = None(e.Spread, e.KindError), KindError = SpreadOverrides.None })
                    .Select(e =>
                        e is Winding w
                            ? w with
                            {
                                Sliders =
                                [
                                    .. w.Sliders.Select(s =>
                                        s with
                                        {
                                            Spread = None(s.Spread, s.KindError),
                                            KindError = SpreadOverrides.None,
                                        }
                                    ),
                                ],
                            }
                            : e
                    ),
            ],
        };
    }
}
