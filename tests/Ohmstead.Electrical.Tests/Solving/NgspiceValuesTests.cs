using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>Drawn sheets and fault sets against what ngspice found for them (key ngspice; made by tests/Ohmstead.Simulator).</summary>
public class NgspiceValuesTests
{
    private const string Folder = "tests/Reference/ngspice/random";

    private const string Expected = ".expected.json";

    public static TheoryData<string> Drawn() =>
        [.. Reference.Names(Folder, "*" + Expected).Select(f => Path.GetFileName(f)[..^Expected.Length])];

    [Theory]
    [MemberData(nameof(Drawn))]
    public void Every_reading_of_a_drawn_sheet_agrees_with_ngspice(string number)
    {
        var sheet = Reference.Sheet($"{Folder}/{number}.sheet.json");
        Assert.Empty(
            ExpectedCases.Of($"{Folder}/{number}{Expected}").SelectMany(c => ExpectedCases.Differences(sheet, c, isUndecayed: false))
        );
    }

    [Fact]
    public void The_sample_sheet_agrees_with_ngspice_on_the_fault_sets_drawn_for_it() =>
        Assert.Empty(
            ExpectedCases
                .Of("tests/Reference/ngspice/twin-160.expected.json")
                .SelectMany(c => ExpectedCases.Differences(Reference.Twin160, c, isUndecayed: false))
        );

    [Fact]
    public void There_are_at_least_20_drawn_sheets_with_fault_sets_of_every_size_to_four()
    {
        var all = Drawn().Select(row => row.Data).ToArray();
        Assert.True(all.Length >= 20, $"{all.Length}");
        var sizes = all.SelectMany(n => ExpectedCases.Of($"{Folder}/{n}{Expected}")).Select(c => c.Faults.Length).ToHashSet();
        Assert.All([0, 1, 2, 3, 4], size => Assert.Contains(size, sizes));
    }

    /// <summary>
    /// A seeded part of the kept values is made anew, so that file and simulator cannot drift apart. All of its time is ngspice's; the
    /// ordinary run is meant to do some of it.
    /// </summary>
    [Fact]
    public void A_drawn_share_of_the_values_comes_out_of_ngspice_again_and_agrees_with_ours() => ComeOutAgain(oneIn: 180);

    [Fact]
    [Trait("kind", "long")]
    public void A_tenth_of_the_values_comes_out_of_ngspice_again_and_agrees_with_ours() => ComeOutAgain(oneIn: 10);

    private static void ComeOutAgain(int oneIn)
    {
        Assert.SkipUnless(
            NgspiceRun.IsThere,
            "ngspice is not installed here (Debian: apt-get install ngspice); the kept values are still compared above."
        );
        var all = Drawn()
            .SelectMany(row =>
                ExpectedCases.Of($"{Folder}/{row.Data}{Expected}").Select(c => (Sheet: $"{Folder}/{row.Data}.sheet.json", Case: c))
            )
            .ToArray();
        var chosen = new Random(160).GetItems(all, Math.Max(1, all.Length / oneIn)).Distinct().ToArray();
        Assert.NotEmpty(chosen);
        foreach (var (file, kept) in chosen)
        {
            var fresh = kept with { Expected = NgspiceRun.Predict(Reference.PathOf(file), kept.Faults) };
            var sheet = Reference.Sheet(file);
            Assert.Empty(ExpectedCases.Differences(sheet, fresh, isUndecayed: false));
            Assert.Equal(kept.Expected.Select(e => e.Key), fresh.Expected.Select(e => e.Key));
            foreach (var (id, value) in kept.Expected)
                AssertSame(sheet.FindReading(id)!.Quantity, $"{file} [{kept}] {id}", value!, fresh.Expected[id]!);
        }
    }

    /// <summary>A tenth of the tolerance with which the values are used.</summary>
    private static void AssertSame(Quantity quantity, string where, JsonNode kept, JsonNode fresh)
    {
        if (kept.GetValueKind() == JsonValueKind.String || fresh.GetValueKind() == JsonValueKind.String)
        {
            Assert.True(kept.ToJsonString() == fresh.ToJsonString(), $"{where}: kept {kept}, now {fresh}");
            return;
        }
        var (one, other) = (kept.GetValue<double>(), fresh.GetValue<double>());
        Assert.True(
            Math.Abs(one - other) <= 0.1 * Tolerance.Of(quantity, one, isPeriodic: false),
            FormattableString.Invariant($"{where}: kept {one:G7}, now {other:G7}")
        );
    }
}
