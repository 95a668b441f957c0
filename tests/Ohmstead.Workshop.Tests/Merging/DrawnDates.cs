using System.Globalization;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.Workshop.Tests.Merging;

/// <summary>Changes of what dates a type, as drawn: years, shares, details and looks entered, changed, taken away and put back, questions answered.</summary>
internal static class DrawnDates
{
    private static readonly string[] Looks = ["slots", "round holes", "mesh"];

    /// <summary>One change, with the record of it.</summary>
    /// <param name="next">Draws a number below the one given.</param>
    public static KindDates Change(KindDates now, Func<int, int> next) => now.ChangedTo(Changed(now, next));

    private static KindDates Changed(KindDates now, Func<int, int> next)
    {
        string Year() => (1940 + next(4)).ToString(CultureInfo.InvariantCulture);
        if (next(4) == 0 && DatesQuestion.Of(now) is [_, ..] asked)
        {
            var question = asked[next(asked.Length)];
            return question.Answer(now, question.Answers[next(question.Answers.Length)]);
        }
        var detail = now.Details.Length == 0 ? null : now.Details[next(now.Details.Length)];
        var look = detail is not { Variants.Length: > 0 } ? null : detail.Variants[next(detail.Variants.Length)];
        return next(7) switch
        {
            0 => DatesEdit.Made(now, now, Year(), "1945", next(3) == 0 ? "30" : "20", YearShares.Shown(now)).Dates ?? now,
            1 => DatesEdit.Add(now, DatesEdit.Usual[next(3)]).Dates ?? now,
            2 when detail is not null => DatesEdit.Put(now, detail.Id, detail.Title, next(2) == 0 ? "below" : "", "5", "").Dates ?? now,
            3 when detail is not null && next(2) == 0 => DatesEdit.Without(now, detail.Id),
            4 when look is not null && next(2) == 0 => DatesEdit.WithoutVariant(now, detail!.Id, look.Id),
            5 when look is not null => DatesEdit.PutVariant(now, detail!.Id, look.Id, new(look.Title, Year(), "", "1")).Dates ?? now,
            _ when detail is not null => DatesEdit.PutVariant(now, detail.Id, "", new(Looks[next(3)], Year(), "", "0")).Dates ?? now,
            _ => DatesEdit.Add(now, DatesEdit.Usual[0]).Dates ?? now,
        };
    }
}
