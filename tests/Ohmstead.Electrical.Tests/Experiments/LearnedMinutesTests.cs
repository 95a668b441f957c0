using System.Text;
using Ohmstead.Perf.Experiments.Minutes;

namespace Ohmstead.Electrical.Tests.Experiments;

/// <summary>Quotes after a hundred logged units of twenty made shops.</summary>
public class LearnedMinutesTests
{
    [Fact]
    public void Jobs_take_less_than_P50_and_P90_as_often_as_is_said()
    {
        var asked = MinutesExperiment.Run(new StringBuilder());
        Assert.All(asked, a => Assert.True(a.IsMet, a.Row()));
    }

    /// <remarks>The shop's own laws are other ones than the quote begins with: what it learned shows in its minutes.</remarks>
    [Fact]
    public void What_was_logged_moves_the_quote_to_the_shop_s_own_minutes()
    {
        var shop = new MadeShop(3);
        var units = Enumerable.Range(0, 100).Select(_ => shop.Unit()).ToList();
        double Off(int logged) =>
            Math.Abs(Math.Log(MadeShop.Quote(units[..logged], 1000).Answer().Finished.Minutes.Mean!.Value / units.Average(u => u.Sum())));
        Assert.True(Off(100) < 0.05 && Off(0) > 0.1, FormattableString.Invariant($"{Off(0)}, {Off(100)}"));
    }
}
