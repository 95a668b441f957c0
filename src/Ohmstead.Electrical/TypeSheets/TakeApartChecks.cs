using System.Globalization;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What must hold in the take-apart tree: known steps and elements, and an order in which every step can be done.</summary>
internal static class TakeApartChecks
{
    public static void Run(JsonCursor root, TypeSheet sheet)
    {
        var steps = sheet.TakeApart;
        var ids = steps.Select(s => s.Id).ToHashSet(StringComparer.Ordinal);
        for (var n = 0; n < steps.Length; n++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"takeApart[{n}]");
            foreach (var id in steps[n].After.Concat(steps[n].AfterAny.SelectMany(g => g)).Where(id => !ids.Contains(id)))
                root.Report($"{at}.after", $"\"{id}\" is no step", "name steps of the sheet");
            foreach (var id in steps[n].Lifts.Where(id => !sheet.Elements.Any(e => e.Id == id)))
                root.Report($"{at}.lifts", $"\"{id}\" is no element", "name elements of the sheet");
        }
        var done = new HashSet<string>(StringComparer.Ordinal);
        while (steps.Any(s => !done.Contains(s.Id) && CanBeDone(s, done) && done.Add(s.Id))) { }
        var stuck = steps.Where(s => !done.Contains(s.Id)).Select(s => s.Id).ToList();
        if (stuck.Count > 0 && stuck.All(ids.Contains))
            root.Report("takeApart", $"has no order in which these can be done: {string.Join(", ", stuck)}", "break the ring in after or afterAny");
    }

    private static bool CanBeDone(TakeApartStep s, HashSet<string> done) =>
        s.After.All(done.Contains) && (s.AfterAny.Length == 0 || s.AfterAny.Any(g => g.All(done.Contains)));
}
