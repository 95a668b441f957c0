using System.Globalization;

namespace Ohmstead.Perf.Experiments;

/// <summary>A page of docs/ with tables between marks.</summary>
internal static class MarkedPage
{
    /// <summary>Puts the tables between the marks of this name.</summary>
    public static void Insert(string file, string name, string tables)
    {
        var text = File.ReadAllText(file);
        var (begin, end) = ($"<!-- {name}: begin -->", $"<!-- {name}: end -->");
        var from = text.IndexOf(begin, StringComparison.Ordinal) + begin.Length;
        var to = text.IndexOf(end, StringComparison.Ordinal);
        File.WriteAllText(file, string.Create(CultureInfo.InvariantCulture, $"{text[..from]}\n{tables}\n{text[to..]}"));
    }
}
