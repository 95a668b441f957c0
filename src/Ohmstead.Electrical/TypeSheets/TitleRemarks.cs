using System.Globalization;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What a sheet's titles leave out, and what they name that is not there.</summary>
internal static class TitleRemarks
{
    private const int MostNamed = 6;

    /// <summary>Each with its JSON path.</summary>
    public static IEnumerable<Problem> Of(TypeSheet sheet)
    {
        var (parts, terminals) = ((List<string>)[.. sheet.PartIds, .. sheet.SharedFaults.Select(f => f.Id)], Terminals(sheet).ToList());
        var controls = sheet.Controls.Select(c => c.Id).ToList();
        var positions = sheet.Controls.SelectMany(c => c.Positions.Select(p => (Key: $"{c.Id}={p}", Position: p))).ToList();
        bool IsBare(string id) => !sheet.Titles.ContainsKey(id);
        Problem?[] missing =
        [
            Missing("part", parts.Where(IsBare), "they are called by what they lie between"),
            Missing("terminal", terminals.Where(t => IsBare(t) && !PlainName.IsWords(t)), "they are called by a number"),
            Missing("control", controls.Where(c => IsBare(c) && !PlainName.IsWords(c)), "they are called by a number"),
            Missing(
                "position",
                positions.Where(p => IsBare(p.Key) && !PlainName.IsWords(p.Position) && !PlainName.IsMark(p.Position)).Select(p => p.Key),
                "they are called by a number"
            ),
        ];
        var known = parts
            .Concat(terminals)
            .Concat(controls)
            .Concat(sheet.Cores.Select(c => c.Id))
            .Concat(positions.Select(p => p.Key))
            .Concat(Ends(sheet))
            .ToHashSet(StringComparer.Ordinal);
        return missing
            .OfType<Problem>()
            .Concat(
                sheet
                    .Titles.Keys.Where(k => !known.Contains(k))
                    .Order(StringComparer.Ordinal)
                    .Select(k => new Problem(
                        "$.titles",
                        $"\"{k}\" is a title of nothing in this sheet",
                        "name a part, end, terminal, control or position"
                    ))
            );
    }

    private static IEnumerable<string> Terminals(TypeSheet sheet) =>
        sheet.Elements.SelectMany(e => new[] { e.From, e.To }.Concat(e.OtherTerminals)).Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> Ends(TypeSheet sheet) =>
        sheet.Elements.SelectMany(e =>
            new[] { $"{e.Id}.from", $"{e.Id}.to" }.Concat(
                e is Winding w
                    ? Enumerable.Range(1, w.Taps.Length).Select(n => string.Create(CultureInfo.InvariantCulture, $"{e.Id}.tap-{n}"))
                    : []
            )
        );

    private static Problem? Missing(string what, IEnumerable<string> ids, string instead)
    {
        var all = ids.ToList();
        if (all.Count == 0)
            return null;
        var more = all.Count > MostNamed ? $" and {(all.Count - MostNamed).ToString(CultureInfo.InvariantCulture)} more" : "";
        return new Problem(
            "$.titles",
            string.Create(
                CultureInfo.InvariantCulture,
                $"no title for {all.Count} {what}{(all.Count == 1 ? "" : "s")}: {string.Join(", ", all.Take(MostNamed))}{more}"
            ),
            instead
        );
    }
}
