using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Web;

/// <summary>What dates the units of a type: read, changed, and asked of a unit.</summary>
internal static class TypeDates
{
    /// <summary>Of a type; null where nothing was entered.</summary>
    public static async Task<KindDates?> ReadAsync(Bench bench, string id) =>
        await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, CancellationToken.None) is { } document
            ? KindDates.Read(document.Text)
            : null;

    /// <summary>When a unit was made; null where its type has nothing entered.</summary>
    public static async Task<DatedUnit?> OfAsync(Bench bench, BenchUnit unit)
    {
        if (unit.Card.SheetId.Length == 0 || await ReadAsync(bench, unit.Card.SheetId) is not { } dates)
            return null;
        return DatedUnit.Of(unit, dates, TimeZoneInfo.ConvertTime(bench.Time.GetUtcNow(), bench.Time.LocalTimeZone).Year);
    }

    /// <summary>Changes what is kept as it is now, so that what another window changed meanwhile stays.</summary>
    /// <returns>As it is kept now, or why the change was refused.</returns>
    public static async Task<DatesEdited> ChangeAsync(Bench bench, string id, Func<KindDates, DatesEdited> change)
    {
        while (true)
        {
            var document = await bench.Store.ReadDocumentAsync(KindDates.DocumentKind, id, CancellationToken.None);
            var now = document is null ? KindDates.None : KindDates.Read(document.Text);
            if (now is null)
                return new(null, "What is kept here was written by a later version of this program. Use that one.");
            var edited = change(now);
            if (edited.Dates is not { } changed)
                return edited;
            var text = KindDates.Write(changed);
            if (text == document?.Text)
                return edited;
            var kept = await bench.SaveDocumentAsync(KindDates.DocumentKind, id, document?.Version ?? 0, text);
            if (kept.IsSaved)
                return edited;
        }
    }

    /// <summary>Adds what came in with a file, or with a copy; null adds nothing.</summary>
    public static async Task AddAsync(Bench bench, string id, KindDates? came)
    {
        if (came is not null)
            await ChangeAsync(bench, id, mine => new(mine.With(came), ""));
    }
}
