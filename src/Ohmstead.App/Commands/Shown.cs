using System.Text;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>Numbers, bars and rows as a person reads them.</summary>
internal static class Shown
{
    /// <summary>Columns that every table keeps within.</summary>
    public const int Width = 96;

    /// <summary>What a sheet is called: its title, or its id.</summary>
    public static string NameOf(TypeSheet sheet) =>
        sheet.Title.Length > 0 ? sheet.Title : PartNames.Unknown(sheet.Id, "A type without a title");

    /// <summary>What one of the kinds has for each open word of its outline.</summary>
    public static string Choices(OutlineKind kind) => string.Join(", ", kind.Choices.Select(c => $"{c.Key}: {c.Value}"));

    /// <summary>A share of ten characters, drawn.</summary>
    public static string Bar(double share)
    {
        var eighths = (int)Math.Round(Math.Clamp(share, 0, 1) * 80);
        const string parts = " ▏▎▍▌▋▊▉";
        var bar = new StringBuilder(new string('█', eighths / 8));
        if (eighths % 8 > 0)
            bar.Append(parts[eighths % 8]);
        return bar.ToString().PadRight(10);
    }

    /// <summary>Cut to a width with an ellipsis, or padded.</summary>
    public static string Fit(string text, int width) => Cut(text, width).PadRight(width);

    /// <summary>Cut to a width with an ellipsis.</summary>
    public static string Cut(string text, int width) => text.Length <= width ? text : text[..(width - 1)].TrimEnd() + "…";

    /// <summary>Words in lines of at most <see cref="Width"/> columns, the lines after the first moved in.</summary>
    public static string Wrapped(string text, int indent) => new string(' ', indent) + Flow(text, indent, indent + 2);

    /// <summary>Words behind the columns of a row, in the room that is left; their further lines begin below the first.</summary>
    public static string Row(string columns, string words) => columns + Flow(words, columns.Length, columns.Length);

    private static string Flow(string text, int column, int further)
    {
        var lines = new StringBuilder();
        foreach (var word in text.TrimStart().Split(' '))
        {
            if (lines.Length > 0 && column + 1 + word.Length > Width)
            {
                lines.Append('\n').Append(' ', further);
                column = further;
            }
            else if (lines.Length > 0)
            {
                lines.Append(' ');
                column++;
            }
            lines.Append(word);
            column += word.Length;
        }
        return lines.ToString();
    }

    /// <summary>Ids that one types, in lines of their own.</summary>
    public static string Ids(IEnumerable<string> ids) => Wrapped(string.Join(' ', ids), 5);
}
