using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Planning.TwoWires;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>What a check of two wires says of readings that are right, wrong, missing or odd.</summary>
public class RewireVerdictTests
{
    /// <summary>
    /// Right values: nothing is left once both readings are there; one reading is not the list; a cold wire is a mistake. Farther than ten
    /// deviations of 1/√3 limits from the right value, 0.577 Ω, where no mistake shows it better, a reading is unexplained; from seven on it
    /// speaks for nobody, and a mistake keeps its own chance.
    /// </summary>
    [Theory]
    [InlineData(1.0, 2.0, RewireVerdict.NoneLeft, "")]
    [InlineData(1.0, double.NaN, RewireVerdict.NotProved, "")]
    [InlineData(9.0, 2.0, RewireVerdict.Mistake, "")]
    [InlineData(1.0, 9.0, RewireVerdict.Mistake, "")]
    [InlineData(1.0, double.PositiveInfinity, RewireVerdict.NotProved, "second")]
    [InlineData(0.41, 2.0, RewireVerdict.NotProved, "first")]
    [InlineData(0.43, 2.0, RewireVerdict.NotProved, "")]
    public void What_a_check_says(double first, double second, RewireVerdict verdict, string unexplained)
    {
        var sheet = Sheet(0);
        var table = Table(sheet, Cold("w-1", 9), Cold("w-2", 9));
        var taken = Taken(sheet, [.. new[] { ("first", first), ("second", second) }.Where(v => !double.IsNaN(v.Item2))]);
        var wiring = new Wiring(sheet);
        var result = RewireCheck.Run(table, new Discrimination(table, wiring), wiring, taken);
        Assert.Equal((verdict, unexplained), (result.Verdict, string.Join(' ', result.Unexplained.Select(r => r.Id))));
        Assert.False(result.WaitsForTheEye);
        Assert.Empty(result.Undiscriminated);
        Assert.Empty(result.Alike);
    }

    /// <summary>Of a reading taken twice the later counts; a mistake that shows nowhere stands under what is not told, and one that is dangerous keeps it unproved.</summary>
    [Fact]
    public void What_no_reading_shows_is_named_and_keeps_a_dangerous_unit_unproved()
    {
        var sheet = new SheetDraft()
            .Element("wire", "w-1", "a", "b", new { ohms = 1, spread = new { ohms = 0 } })
            .Element("wire", "hidden", "x", "y", new { ohms = 1, spread = new { ohms = 0 } })
            .Element("breaker", "cut", "y", "z", new { ohms = 0.04 })
            .Reading("first", "ohms", ["a", "b"])
            .Sheet();
        RewireResult Run(params Mistake[] mistakes)
        {
            var table = Table(sheet, mistakes);
            var wiring = new Wiring(sheet);
            return RewireCheck.Run(table, new Discrimination(table, wiring), wiring, Taken(sheet, ("first", 9), ("first", 1)));
        }
        var harmless = Run(Cold("w-1", 9), Cold("hidden", 9));
        Assert.Equal(RewireVerdict.NoneLeft, harmless.Verdict);
        Assert.Equal(["cold:hidden"], harmless.Undiscriminated.Select(m => m.Id));
        Assert.Empty(harmless.Dangerous);
        var dangerous = Run(Cold("w-1", 9), new("bypassed:cut", 1, [1e-3]));
        Assert.Equal((RewireVerdict.NotProved, true), (dangerous.Verdict, dangerous.WaitsForTheEye));
        Assert.Equal(["bypassed:cut"], dangerous.Dangerous.Select(m => m.Id));
    }

    [Fact]
    public void The_thirty_most_probable_sets_are_named()
    {
        var sheet = Sheet(0);
        var table = Table(sheet, [.. Enumerable.Range(0, 40).Select(n => new Mistake("cold:w-2", 1 + (n * 0.1), [9]))]);
        var wiring = new Wiring(sheet);
        var probable = RewireCheck.Run(table, new Discrimination(table, wiring), wiring, Taken(sheet, ("first", 1))).Probable;
        Assert.Equal(30, probable.Length);
        Assert.Equal(probable.Select(h => h.Probability).OrderDescending(), probable.Select(h => h.Probability));
        Assert.Empty(probable[0].Mistakes);
        Assert.Equal(4.9, probable[1].Mistakes.Single().Percent, 9);
    }

    /// <summary>Alike: no reading that was used differs by more than one limit, at no size; of other sizes none is alike.</summary>
    [Fact]
    public void Mistakes_within_one_limit_of_each_other_are_alike()
    {
        var sheet = Sheet(0);
        var table = Table(
            sheet,
            Cold("w-1", 3),
            Cold("w-1", 3.099),
            Cold("w-1", 3.101),
            Cold("w-2", 3),
            Cold("w-1", 3, 4),
            Cold("w-1", 3.05, 4.2)
        );
        bool Alike(int a, int b, params int[] used) => RewireCheck.AreAlike(table, a, b, used);
        Assert.True(Alike(0, 1, 0, 1));
        Assert.False(Alike(0, 2, 0, 1));
        Assert.True(Alike(0, 2, 1));
        Assert.False(Alike(0, 3, 0, 1));
        Assert.False(Alike(0, 4, 0));
        Assert.False(Alike(4, 5, 0));
        Assert.True(Alike(4, 4, 0));
    }

    /// <summary>Three that show the same stand in one group, whatever their chances; what shows elsewhere, or alone, stands in none.</summary>
    [Fact]
    public void All_that_are_alike_stand_in_one_group()
    {
        var sheet = Sheet(0);
        Mistake[] mistakes =
        [
            new("cold:w-1", 1, [3]),
            new("cold:w-2", 2, [5]),
            new("cold:w-1", 3, [3.02]),
            new("cold:w-1", 4, [8]),
            new("cold:w-1", 5, [3.04]),
        ];
        var table = Table(sheet, mistakes);
        var wiring = new Wiring(sheet);
        var result = RewireCheck.Run(table, new Discrimination(table, wiring), wiring, Taken(sheet));
        Assert.Equal([1, 3, 5], Assert.Single(result.Alike).Select(m => m.Percent));
    }
}
