using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Kinds;

namespace Ohmstead.App.Components;

/// <summary>A type that came in from a file.</summary>
/// <param name="Id">Its id; empty when it was refused.</param>
/// <param name="IsUsable">True when units can be of it at once; false for a draft that is shown with its mistakes.</param>
/// <param name="Refused">Why it was refused, in words; empty when it was not.</param>
public sealed record BroughtIn(string Id, bool IsUsable, string Refused)
{
    /// <summary>
    /// Keeps the text of a file: as a version that can be used at once, where it is sound and nothing is kept under its id; else
    /// as a draft, so that nothing is overwritten.
    /// </summary>
    /// <param name="name">Name of the file.</param>
    public static async Task<BroughtIn> KeepAsync(Bench bench, string name, string text)
    {
        if (TypeFile.Read(text) is { } own)
            return await KeepOwnAsync(bench, own);
        if (KindDatesRead.Of(text) is { IsOne: true } read)
            return read.Dates is { } dates
                ? await KeepDatesAsync(bench, name, dates)
                : new("", false, $"{name} holds years and details that cannot be used. {read.Problem}");
        var id = KindText.IdOf(text);
        if (KindText.IdProblem(id) is { Length: > 0 } wrong)
            return new("", false, $"{name} is no type sheet: its field \"id\" cannot be used. {wrong}");
        var kept = await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, CancellationToken.None);
        if (kept?.Text == text)
            return new(id, true, "");
        if (kept is null && TypeSheetFile.Read(text).IsSound)
        {
            await bench.SaveDocumentAsync(Bench.SheetKind, id, 0, text);
            return new(id, true, "");
        }
        var draft = await bench.Store.ReadDocumentAsync(KindText.DraftKind, id, CancellationToken.None);
        await bench.SaveDocumentAsync(KindText.DraftKind, id, draft?.Version ?? 0, text);
        return new(id, false, "");
    }

    /// <summary>Years and details of a type that is here: what it has stays, what it lacks is added.</summary>
    private static async Task<BroughtIn> KeepDatesAsync(Bench bench, string name, KindDates dates)
    {
        if (await bench.Store.ReadDocumentAsync(Bench.SheetKind, dates.Type, CancellationToken.None) is null)
            return new("", false, $"{name} holds years and details of a type that is not here. Bring in its type sheet first.");
        return await TypeDates.AddAsync(bench, dates.Type, dates) is { Length: > 0 } refused
            ? new("", false, $"{name}: {refused}")
            : new(dates.Type, true, "");
    }

    /// <summary>Keeps a type that another workshop was asked for, beside one's own: where its id is taken, under another.</summary>
    private static async Task<BroughtIn> KeepOwnAsync(Bench bench, TypeFile own)
    {
        if (own.DatingProblem.Length > 0)
            return new("", false, $"The years and details in this file cannot be used. {own.DatingProblem} Ask for the file again.");
        var text = own.SheetText;
        if (TypeSheetFile.Read(text).Value is not { } sheet || KindText.IdProblem(sheet.Id).Length > 0)
            return new("", false, "The type sheet in this file has mistakes. Ask for the file again.");
        var kept = await bench.Store.ReadDocumentAsync(Bench.SheetKind, sheet.Id, CancellationToken.None);
        if (kept?.Text == text)
        {
            await OwnTypes.KeepSoundAsync(bench, sheet.Id, own.Type.Sound);
            return await WithDatesAsync(bench, sheet.Id, own);
        }
        var id = sheet.Id;
        if (kept is not null)
        {
            id = KindText.FreeId(id, (await bench.Store.DocumentsAsync(Bench.SheetKind, CancellationToken.None)).Select(d => d.Id));
            text = KindText.Copy(text, id, sheet.Title);
        }
        return await OwnTypes.SaveAsync(
            bench,
            id,
            own.Type with
            {
                Made = null,
                Beside = id == sheet.Id ? "" : sheet.Id,
            },
            text,
            own.Type.Made!
        )
            ? await WithDatesAsync(bench, id, own)
            : new("", false, "Another window is changing this type. Bring the file in again.");
    }

    /// <summary>A type that is kept, and then what dates it.</summary>
    private static async Task<BroughtIn> WithDatesAsync(Bench bench, string id, TypeFile own) =>
        await TypeDates.AddAsync(bench, id, own.Dating) is { Length: > 0 } refused
            ? new("", false, $"The type is here now, without its years and details. {refused}")
            : new(id, true, "");
}
