using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>What dates the units of a type: read, changed, and asked of a unit.</summary>
internal static class TypeDates
{
    /// <summary>Of a type: neither years nor a problem where nothing was entered, a problem where it cannot be read.</summary>
    public static async Task<KindDatesRead> ReadAsync(Bench bench, string id)
    {
        if (await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, CancellationToken.None) is not { } document)
            return new(null, "", false);
        var read = KindDatesRead.Of(document.Text);
        return read.Dates is null ? read with { Problem = Unread(read) } : read;
    }

    private static string Unread(KindDatesRead read) =>
        $"The years and details that are kept of this type cannot be used, and stay as they are. {read.Problem}";

    /// <summary>When a unit was made; null where its type has nothing entered.</summary>
    public static async Task<DatedUnit?> OfAsync(Bench bench, BenchUnit unit)
    {
        if (unit.Card.SheetId.Length == 0)
            return null;
        var read = await ReadAsync(bench, unit.Card.SheetId);
        if (read.Dates is not { } dates)
            return read.Problem.Length > 0 ? new([], null, read.Problem, "") : null;
        return DatedUnit.Of(unit, dates, TimeZoneInfo.ConvertTime(bench.Time.GetUtcNow(), bench.Time.LocalTimeZone).Year);
    }

    /// <summary>Changes what is kept as it is now, so that what another window changed meanwhile stays.</summary>
    /// <returns>As it is kept now, or why the change was refused.</returns>
    public static async Task<DatesEdited> ChangeAsync(Bench bench, string id, Func<KindDates, DatesEdited> change)
    {
        while (true)
        {
            var document = await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, CancellationToken.None);
            var now = document is null ? new(KindDates.None, "", false) : KindDatesRead.Of(document.Text);
            if (now.Dates is null)
                return new(null, Unread(now));
            var edited = change(now.Dates);
            if (edited.Dates is null)
                return edited;
            var changed = edited with { Dates = now.Dates.ChangedTo(edited.Dates) };
            var text = KindDates.Write(changed.Dates);
            if (text == document?.Text)
                return changed;
            var kept = await bench.SaveDocumentAsync(KindDates.DocumentKind, id, document?.Version ?? 0, text);
            if (kept.IsSaved)
                return changed;
        }
    }

    /// <summary>Adds what came in with a file, or with a copy; null adds nothing.</summary>
    /// <returns>Why it was refused; empty where it was not.</returns>
    public static async Task<string> AddAsync(Bench bench, string id, KindDates? came)
    {
        if (came is null)
            return "";
        DatesEdited Both(KindDates mine)
        {
            var both = KindDatesRead.Of(mine.With(came));
            return new(both.Dates, both.Problem.Length == 0 ? "" : $"What came cannot be put beside what is here. {both.Problem}");
        }
        return (await ChangeAsync(bench, id, Both)).Problem;
    }

    /// <summary>Copies what dates a type to a copy of the type; what cannot be read is copied as it is.</summary>
    /// <returns>Why it was refused; empty where it was not.</returns>
    public static async Task<string> CopyAsync(Bench bench, string from, string to)
    {
        if (await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, from, CancellationToken.None) is not { } document)
            return "";
        if (KindDates.Read(document.Text) is { } dates)
            return await AddAsync(bench, to, dates);
        var kept = await bench.SaveDocumentAsync(KindDates.DocumentKind, to, 0, document.Text);
        return kept.IsSaved ? "" : "Its years and details were not copied: the copy has some already.";
    }
}
