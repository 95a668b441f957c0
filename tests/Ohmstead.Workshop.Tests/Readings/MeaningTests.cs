using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Tests.Readings;

/// <summary>What a reading says by itself, in words.</summary>
public class MeaningTests
{
    private static readonly TypeSheet Sheet = OnTheBench.Sheet;
    private static readonly ReadingSpec Volts = Sheet.FindReading("left-full")!;
    private static readonly ReadingSpec Insulation = Sheet.FindReading("insulation-core")!;

    private static Meaning Of(Shown shown, ReadingSpec spec, Expectation band) =>
        Meaning.Of(shown, spec, band, Meter.Usual.For(spec.Quantity));

    private static Expectation BandOf(ReadingSpec spec, UnitModel? model = null) =>
        Expectation.Of(model ?? new UnitModel(Sheet), spec, spec.State, Meter.Usual);

    [Fact]
    public void The_meaning_is_in_words()
    {
        var band = new Expectation(Quantity.AcVolts, 16.5, 16, 17);
        Assert.Equal("normal", Of(Shown.Number(16.9), Volts, band).Words);
        // From the end of the band: 16 − 14.9, and 17.1 − 17.
        Assert.Equal("1.1 V low", Of(Shown.Number(14.9), Volts, band).Words);
        Assert.Equal(new Meaning(Verdict.AlittleOff, "a little high, by 0.1 V"), Of(Shown.Number(17.1), Volts, band));
        Assert.Equal(Verdict.Jumps, Of(Shown.Jumps(3, null), Volts, band).Verdict);
        Assert.Equal("not taken: no load here", Of(Shown.NotTaken("no load here"), Volts, band).Words);
        Assert.Equal("OL: open", Of(Shown.OverRange, Sheet.FindReading("ohms-left")!, band).Words);
        Assert.Equal("not judged: DC in the core", Of(Shown.Number(9), Volts, band with { CanJudge = false }).Words);
    }

    [Fact]
    public void A_failed_insulation_check_is_called_failed_with_its_limit_and_what_follows()
    {
        var failed = Of(Shown.Number(20e3), Insulation, BandOf(Insulation));
        Assert.Equal((Verdict.Failed, "failed: at least 2.00 MΩ"), (failed.Verdict, failed.Words));
        Assert.Equal(
            "It fails the type sheet's limit, at least 2.00 MΩ. Do not plug it in. Find the cause, repair it, then read this again.",
            failed.Next
        );
        var close = Of(Shown.Number(2.05e6), Insulation, BandOf(Insulation));
        Assert.Equal((Verdict.TooClose, "too close for this meter"), (close.Verdict, close.Words));
        Assert.Contains("use a better meter", close.Next, StringComparison.Ordinal);
        Assert.Equal(new Meaning(Verdict.Normal, "passed"), Of(Shown.Number(300e6), Insulation, BandOf(Insulation)));
        // 5 MΩ passes and is far from what a sound unit has: both are said.
        var damp = Of(Shown.Number(5e6), Insulation, BandOf(Insulation));
        Assert.Equal(Verdict.Off, damp.Verdict);
        Assert.Matches(@"^passed, \d\d times too low$", damp.Words);
    }

    [Fact]
    public void A_check_that_jumps_has_failed()
    {
        var jumps = Of(Shown.Jumps(300e6, 250e6), Insulation, BandOf(Insulation));
        Assert.Equal((Verdict.Failed, "failed: it jumps"), (jumps.Verdict, jumps.Words));
    }

    [Fact]
    public void Across_the_gap_OL_passes_and_a_number_fails()
    {
        var spec = Sheet.FindReading("blades-posts")!;
        var gap = BandOf(spec);
        Assert.Equal("OL", gap.Band);
        Assert.Equal("passed", Of(Shown.OverRange, spec, gap).Words);
        Assert.Equal(Verdict.Failed, Of(Shown.Number(40e3), spec, gap).Verdict);
        Assert.Equal("should be OL", Of(Shown.Number(40e3), spec with { Limits = null }, gap).Words);
    }

    [Fact]
    public void How_many_times_is_said_in_two_digits()
    {
        var band = new Expectation(Quantity.InsulationOhms, 243e6, 70e6, 830e6);
        var spec = Insulation with { Limits = null };
        // The lower end over the value: 70 MΩ over 20 kΩ, and over 32 MΩ.
        Assert.Equal("3,500 times too low", Of(Shown.Number(20e3), spec, band).Words);
        Assert.Equal("2.2 times too low", Of(Shown.Number(32e6), spec, band).Words);
        Assert.Equal("a little low", Of(Shown.Number(60e6), spec, band).Words);
        // It is never too good.
        Assert.Equal(new Meaning(Verdict.Normal, "normal"), Of(Shown.Number(950e6), spec, band));
        Assert.Equal(new Meaning(Verdict.Normal, "normal"), Of(Shown.OverRange, spec, band));
    }

    [Theory]
    [InlineData("tests/Reference/sample/twin-160.sheet.json")]
    [InlineData("demo/solo-110.sheet.json")]
    [InlineData("demo/step-230.sheet.json")]
    [InlineData("demo/twin-175.sheet.json")]
    public void Nothing_outside_its_limits_nor_ten_times_out_of_its_band_is_a_little_off(string file) =>
        NothingIsALittleOff(OnTheBench.SheetOf(file));

    [Fact]
    [Trait("kind", "long")]
    public void And_so_on_every_sheet_of_the_repository()
    {
        var files = OnTheBench.Files("tests/Reference", "*.sheet.json");
        Assert.True(files.Count > 38);
        foreach (var file in files)
            NothingIsALittleOff(OnTheBench.SheetOf(file));
    }

    private static void NothingIsALittleOff(TypeSheet sheet)
    {
        var model = new UnitModel(sheet);
        var bands = Prediction
            .Run(model, sheet.Readings.Select(r => (r, r.State)), [])
            .Select(p => Expectation.Of(p, Meter.Usual.For(p.Spec.Quantity)));
        foreach (var (spec, band) in sheet.Readings.Zip(bands))
        {
            foreach (var value in FarOff(band))
                Assert.DoesNotContain("a little", Of(Number(value), spec, band).Words, StringComparison.Ordinal);
            foreach (var value in Outside(spec.Limits))
            {
                var meaning = Of(Number(value), spec, band);
                Assert.Equal(Verdict.Failed, meaning.Verdict);
                Assert.StartsWith("failed", meaning.Words, StringComparison.Ordinal);
            }
        }
    }

    private static Shown Number(double value) => double.IsPositiveInfinity(value) ? Shown.OverRange : Shown.Number(value);

    /// <summary>Ten and a thousand times beyond each end, away from the band; a direct voltage may be negative.</summary>
    private static IEnumerable<double> FarOff(Expectation band)
    {
        if (!band.CanJudge)
            return [];
        (double End, bool IsUp)[] ends = [(band.Low, band.Low < 0), (band.High, band.High > 0)];
        return ends.SelectMany(e => new[] { 10.001, 1000 }.Select(times => e.IsUp ? e.End * times : e.End / times))
            .Where(v => !band.Holds(v));
    }

    private static IEnumerable<double> Outside(Limits? limits)
    {
        if (limits is { Min: > 0 and < double.PositiveInfinity })
            foreach (var share in new[] { 0.999, 0.5, 0.01, 1e-6 })
                yield return limits.Min * share;
        if (limits is { Max: > 0 and < double.PositiveInfinity })
            foreach (var times in new[] { 1.001, 2, 1000, double.PositiveInfinity })
                yield return limits.Max * times;
    }
}
