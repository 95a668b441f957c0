using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>
/// Resistors with sliders, off ends, capacitors and shared faults, sound and faulted, within 0.3 % of ngspice (key ngspice; drawn by
/// tests/Ohmstead.Simulator). The source's current while a rectifier drives direct current through a winding is outside the model.
/// </summary>
public class NewSortsSpiceTests
{
    private const string Folder = "tests/Reference/ngspice/random";

    private static readonly string[] Kept = ["100", "102", "103", "104", "105", "106", "107", "108"];

    public static TheoryData<string> Drawn() => [.. Kept];

    [Theory]
    [MemberData(nameof(Drawn))]
    public void Every_reading_is_within_three_in_a_thousand(string number) =>
        Assert.Empty(
            ExpectedCases
                .Of($"{Folder}/{number}.expected.json")
                .SelectMany(c => Differences(Reference.Sheet($"{Folder}/{number}.sheet.json"), c))
        );

    [Fact]
    public void The_kept_ones_have_every_new_sort_sound_and_faulted()
    {
        var cases = Kept.SelectMany(n => ExpectedCases.Of($"{Folder}/{n}.expected.json")).SelectMany(c => c.Faults).ToList();
        Assert.All(
            ["filter:", "rheostat:", "brush:", "stack-aged:"],
            part => Assert.Contains(cases, f => f.StartsWith(part, StringComparison.Ordinal))
        );
        var sheets = Kept.Select(n => Reference.Sheet($"{Folder}/{n}.sheet.json")).ToList();
        Assert.Contains(sheets, s => s.Sliders.Any(b => b.OffBelow > 0) && s.Sliders.Any(b => b.IsOff(0)));
        Assert.Contains(sheets, s => s.Sliders.Any(b => b.OffAbove < 1));
    }

    /// <summary>Sheets that nothing keeps, drawn and solved by ngspice now.</summary>
    [Fact]
    [Trait("kind", "long")]
    public void Freshly_drawn_sheets_are_too()
    {
        Assert.SkipUnless(NgspiceRun.IsThere, "ngspice is not installed here (Debian: apt-get install ngspice).");
        var folder = Directory.CreateTempSubdirectory("ohmstead-sorts-").FullName;
        try
        {
            NgspiceRun.More(folder, 12);
            var files = Directory.GetFiles(folder, "*.expected.json").Order(StringComparer.Ordinal).ToList();
            Assert.Equal(12, files.Count);
            foreach (var file in files)
            {
                var sheet = TypeSheetFile.Read(File.ReadAllText(file.Replace(".expected.", ".sheet.", StringComparison.Ordinal))).Required;
                foreach (var c in JsonNode.Parse(File.ReadAllText(file))!["cases"]!.AsArray())
                    Assert.Empty(Differences(sheet, ExpectedCases.CaseOf(c!)).Select(d => $"{Path.GetFileName(file)} {d}"));
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    private static IEnumerable<string> Differences(TypeSheet sheet, ExpectedCases.Case one)
    {
        var (unit, faults) = ExpectedCases.UnitWith(sheet, one.Faults);
        foreach (var (id, expected) in one.Expected)
        {
            var ours = unit.ReadListed(id, faults);
            var spec = sheet.FindReading(id)!;
            if (expected!.GetValueKind() == System.Text.Json.JsonValueKind.String)
            {
                if (!double.IsPositiveInfinity(ours))
                    yield return FormattableString.Invariant($"[{one}] {id}: ours {ours:G7}, expected {expected}");
                continue;
            }
            var value = expected.GetValue<double>();
            var isOfTheSource = spec.Quantity is Quantity.AcAmps or Quantity.Watts;
            if (!(isOfTheSource && unit.WasPeriodic) && !(Math.Abs(ours - value) <= Tolerance.Of(spec.Quantity, value, isPeriodic: false)))
                yield return FormattableString.Invariant($"[{one}] {id}: ours {ours:G7}, expected {value:G7}");
        }
    }
}
