using System.Globalization;
using System.Text.Json;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;

namespace Ohmstead.Workshop.Asking;

/// <summary>A number or a name of a drafted sheet, put right by hand: the rest of its text stays as it is.</summary>
public static class TypeEdit
{
    /// <summary>Doubt about a number that a person puts in: a good meter on one unit. Common practice, no source.</summary>
    private const double SaidDoubt = 0.03;

    /// <summary>The sheet's text and what it rests on with another number: what the spread has of units stays, the doubt about the type goes.</summary>
    /// <returns>Null where the sheet has no such number, or would no longer be sound with it.</returns>
    public static (string Text, MadeType Made)? Put(string text, MadeType made, string path, double value)
    {
        if (TypeSheetFile.Read(text).Value is not { } sheet || KindFit.PathIn(sheet, path) is not { } at)
            return null;
        var put = KindText.Put(text, at, Digits(value));
        var (part, field) = (at[..at.LastIndexOf('.')], at[(at.LastIndexOf('.') + 1)..]);
        if (Doubts(sheet, path.Split('.')[1], field) is var (whole, doubt) && doubt > 0)
        {
            var ofUnits = Math.Sqrt(Math.Max(0, (whole * whole) - (doubt * doubt)));
            put = KindText.Put(put, $"{part}.kindError.{field}", Digits(SaidDoubt));
            put = KindText.Put(put, $"{part}.spread.{field}", Digits(double.Hypot(ofUnits, SaidDoubt)));
        }
        return put == text || !TypeSheetFile.Read(put).IsSound
            ? null
            : (put, made with { Values = [.. made.Values.Select(v => v.Path == path ? Said(v, value) : v)] });
    }

    /// <summary>The sheet's text with another name of a part; null where it has no such part, or no name was typed.</summary>
    public static string? Name(string text, string part, string name)
    {
        if (name.Trim().Length == 0)
            return null;
        var named = KindText.Put(text, $"$.titles.{part}", JsonSerializer.Serialize(name.Trim(), FactText.Options));
        return named != text && TypeSheetFile.Read(named).IsSound ? named : null;
    }

    private static DraftedValue Said(DraftedValue v, double value) =>
        v with
        {
            Value = value,
            RelativeError = SaidDoubt,
            Origin = Origin.Stated,
            From = [],
        };

    /// <summary>The whole spread of a part's number, and how much of it is doubt about the type.</summary>
    private static (double Whole, double Doubt) Doubts(TypeSheet sheet, string id, string field)
    {
        if (sheet.Cores.FirstOrDefault(c => c.Id == id) is { } core)
            return (core.Spread.Of(field, 0), core.KindError.Of(field, 0));
        if (sheet.Elements.FirstOrDefault(e => e.Id == id) is { } element)
            return (element.Spread.Of(field, 0), element.KindError.Of(field, 0));
        var slider = sheet.Elements.OfType<Winding>().SelectMany(w => w.Sliders).First(s => s.Id == id);
        return (slider.Spread.Of(field, 0), slider.KindError.Of(field, 0));
    }

    private static string Digits(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
