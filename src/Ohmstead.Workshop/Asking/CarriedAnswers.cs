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
    /// throttle's and the last as the common one; a second throttle as the first.
    /// </summary>
    public static KindAnswers Proposed(KindAnswers a, string key)
    {
        if (KindQuestions.ThrottleOf(key) is >= 0 and var n && a.Throttle(n).IsUnsaid)
        {
            var (named, own, first) = (a.Named, a.Throttle(n), a.Throttle(0));
            if (n > 0)
                return a.With(
                    n,
                    own with
                    {
                        Post = n < named.Length - 1 ? named[n] : "",
                        Return = first.Return,
                        Low = first.Low,
                        Full = first.Full,
                        Steps = first.Steps,
                        Ohms = first.Ohms,
                    }
                );
            return !a.IsDirectAt(n) && named.Length > 1 ? a.With(0, own with { Post = named[0], Return = named[^1] }) : a;
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
}
