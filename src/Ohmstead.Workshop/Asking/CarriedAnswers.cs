using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>What is known of a unit without a type, as answers: its plate, and its posts in the order in which they were named.</summary>
public static class CarriedAnswers
{
    /// <summary>The answers to begin with.</summary>
    /// <param name="unit">The unit; null for a type of which none is there.</param>
    public static KindAnswers Of(BenchUnit? unit)
    {
        var start = new KindAnswers { Volts = ValueText.Plain(PlateRule.UsualVolts) };
        if (unit is null)
            return start;
        var plate = PlateRule.PlateOf(unit);
        return start with
        {
            Volts = plate.Volts is { } volts ? ValueText.Plain(volts) : "",
            Watts = plate.Watts is { } watts ? ValueText.Plain(watts) : "",
            Named = [.. UntypedSheet.Posts(unit).Select(p => p.Name)],
        };
    }

    /// <summary>
    /// With what is proposed where a question is opened that was not answered: posts that were named before, the first as the
    /// throttle's and the last as the common one; volts as those of a throttle before it that runs on the same.
    /// </summary>
    public static KindAnswers Proposed(KindAnswers a, string key)
    {
        if (KindQuestions.ThrottleOf(key) is >= 0 and var n && a.Throttle(n).IsUnsaid)
        {
            var like = Enumerable
                .Range(0, n)
                .Where(t => a.At(t).Runs == a.At(n).Runs)
                .Select(a.Throttle)
                .FirstOrDefault(new ThrottleAnswer());
            var proposed = WithPosts(a, n) with { Low = like.Low, Full = like.Full, Steps = like.Steps, Ohms = like.Ohms };
            return proposed.IsUnsaid ? a : a.With(n, proposed);
        }
        if (key == KindQuestions.Fixed && a.Fixed.Length == 0 && a.Posts.IsEmpty)
        {
            var said = Enumerable.Range(0, a.ThrottleCount).SelectMany(t => new[] { a.Throttle(t).Post, a.Throttle(t).Return }).ToList();
            var from = a.FirstReturn ?? "";
            return a with
            {
                Posts =
                [
                    .. a.Named.Where(p => !said.Any(s => PostMark.IsSame(s, p))).Select(p => new PostAnswer { Post = p, Return = from }),
                ],
            };
        }
        return a;
    }

    /// <summary>A throttle with the posts that are proposed for it; none where DC comes out, for nobody asks for them.</summary>
    private static ThrottleAnswer WithPosts(KindAnswers a, int n)
    {
        var (named, own) = (a.Named, a.Throttle(n));
        if (a.IsDirectAt(n))
            return own;
        int[] before = [.. Enumerable.Range(0, n).Where(t => !a.IsDirectAt(t))];
        return own with
        {
            Post = before.Length < named.Length - 1 ? named[before.Length] : "",
            Return =
                before.Length > 0 ? a.Throttle(before[0]).Return
                : named.Length > 1 ? named[^1]
                : "",
        };
    }
}
