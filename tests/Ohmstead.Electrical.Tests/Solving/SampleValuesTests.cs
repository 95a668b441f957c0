namespace Ohmstead.Electrical.Tests.Solving;

/// <summary>The sample sheet against the values that came with it (ngspice 39.3, not made by this project).</summary>
public class SampleValuesTests
{
    private const string File = "tests/Reference/sample/twin-160.expected.json";

    public static TheoryData<int> Cases() => [.. Enumerable.Range(0, ExpectedCases.Of(File).Count)];

    /// <remarks>
    /// The expected values come from runs of 170 cycles, after which up to about 5 mV of start-up flux is still in the mean
    /// voltages: right-second-dc with disc-right:open is 4.8 mV there, and 0 by the rule of docs/formats.md for a rectifier that
    /// does not conduct. All mean voltages are therefore judged with the 15 mV that hold where a rectifier conducts.
    /// </remarks>
    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_reading_of_the_sample_sheet_agrees_with_the_expected_values(int number) =>
        Assert.Empty(ExpectedCases.Differences(Reference.Twin160, ExpectedCases.Of(File)[number], isUndecayed: true));

    [Fact]
    public void The_expected_values_cover_every_reading_of_the_sheet_and_many_fault_sets()
    {
        var cases = ExpectedCases.Of(File);
        Assert.True(cases.Count >= 10);
        var ids = cases.SelectMany(c => c.Expected.Select(e => e.Key)).ToHashSet(StringComparer.Ordinal);
        Assert.All(Reference.Twin160.Readings, r => Assert.Contains(r.Id, ids));
    }
}
