using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using static Ohmstead.Electrical.Tests.Planning.TwinMistakes;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>A rewire checked before mains, what takes long: on many units drawn with and without a mistake, to its end and stopped.</summary>
public class RewireDrawnTests
{
    [Fact]
    public void It_tells_how_far_it_is_and_ends_when_it_is_stopped()
    {
        using var stop = new CancellationTokenSource();
        var told = new System.Collections.Concurrent.ConcurrentBag<double>();
        void Told(double share)
        {
            told.Add(share);
            stop.Cancel();
        }
        Assert.ThrowsAny<OperationCanceledException>(() => RewireCheck.Run(Sheet, Nothing, progress: Told, cancellation: stop.Token));
        var all = MistakeList.Of(Sheet).Length;
        // Each core may finish the few that it began.
        Assert.InRange(told.Count, 1, all / 4);
        told.Clear();
        RewireCheck.Run(Sheet, Nothing, progress: told.Add, cancellation: TestContext.Current.CancellationToken);
        Assert.Equal(Enumerable.Range(1, all).Select(n => (double)n / all), told.Order());
    }

    [Fact]
    public void Nine_in_ten_rightly_wired_units_pass() => RightlyWiredPass(30);

    [Fact]
    [Trait("kind", "long")]
    public void Nine_in_ten_of_200_rightly_wired_units_pass() => RightlyWiredPass(200);

    [Fact]
    public void On_every_sixth_mistake_that_can_be_told_it_or_one_alike_stands_first() => StandsFirst(ThatCanBeTold(oneIn: 6));

    [Fact]
    [Trait("kind", "long")]
    public void On_every_mistake_that_can_be_told_it_or_one_alike_stands_first() => StandsFirst(ThatCanBeTold());

    private static void StandsFirst(List<int> told)
    {
        Assert.True(told.Count > 20, "hardly a mistake was looked at");
        var others = new List<string>();
        foreach (var m in told)
        {
            var mistake = Table.Mistakes[m];
            var result = Check(mistake.Make(Sheet, mistake.Sizes[mistake.Sizes.Length / 2]), m, isNominal: true);
            var best = result.Probable[0].Mistakes;
            if (!best.Any(b => b.Id == mistake.Id) && !MistakesShown.TheSame(Table, result.ToRead, mistake, best))
                others.Add($"{mistake.Id} ({string.Join(" and ", best.Select(b => b.Id))})");
        }
        Assert.True(others.Count <= 0.05 * told.Count, string.Join("; ", others));
    }

    [Fact]
    public void A_unit_with_a_mistake_that_can_be_told_never_passes() => MistakesDoNotPass(30);

    [Fact]
    [Trait("kind", "long")]
    public void Of_1000_units_with_a_mistake_that_can_be_told_none_passes() => MistakesDoNotPass(1000);

    private static void RightlyWiredPass(int units)
    {
        var right = Enumerable.Range(0, units).Count(n => Check(Sheet, 900 + n).Verdict == RewireVerdict.NoneLeft);
        Assert.True(right >= 0.9 * units, FormattableString.Invariant($"{right} of {units} rightly wired units pass"));
    }

    private static void MistakesDoNotPass(int units)
    {
        var told = ThatCanBeTold();
        var passed = new List<string>();
        for (var n = 0; n < units; n++)
        {
            var mistake = Table.Mistakes[told[n * 7 % told.Count]];
            if (Check(mistake.Make(Sheet, mistake.Sizes[n % mistake.Sizes.Length]), n).Verdict == RewireVerdict.NoneLeft)
                passed.Add(mistake.Id);
        }
        Assert.True(passed.Count == 0, string.Join(", ", passed));
    }

    /// <summary>A reading that shows nothing has no place in the list: by itself, or because the others miss something without it.</summary>
    [Theory]
    [InlineData("demo/twin-175.sheet.json")]
    [InlineData("demo/solo-110.sheet.json")]
    [InlineData("demo/step-230.sheet.json")]
    public void Every_reading_of_the_list_shows_some_mistake(string file)
    {
        var sheet = Reference.Sheet(file);
        var none = new UnitReadings(sheet.Id, sheet.SupplyVolts, null, Meter.Usual, [], []);
        Assert.All(
            RewireCheck.Run(sheet, none, cancellation: TestContext.Current.CancellationToken).ToRead,
            t => Assert.NotEmpty(t.Discriminates)
        );
    }
}
