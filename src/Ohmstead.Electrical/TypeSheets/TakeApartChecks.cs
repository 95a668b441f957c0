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
            foreach (var id in steps[n].After.Where(id => !ids.Contains(id)))
                root.Report($"{at}.after", $"\"{id}\" is no step", "name steps of the sheet");
            foreach (var id in steps[n].AfterAny.SelectMany(g => g).Where(id => !ids.Contains(id)))
                root.Report($"{at}.afterAny", $"\"{id}\" is no step", "name steps of the sheet");
            if (steps[n].AfterAny.Any(g => g.IsEmpty))
                root.Report($"{at}.afterAny", "has a group without a step, which frees nothing", "name its steps or leave the group out");
            foreach (var id in steps[n].Lifts.Where(id => !sheet.Elements.Any(e => e.Id == id)))
                root.Report($"{at}.lifts", $"\"{id}\" is no element", "name elements of the sheet");
        }
        var byId = steps.DistinctBy(s => s.Id, StringComparer.Ordinal).ToDictionary(s => s.Id, StringComparer.Ordinal);
        var done = new HashSet<string>(StringComparer.Ordinal);
        while (steps.Any(s => !done.Contains(s.Id) && WaitsFor(s, byId, done) is null && done.Add(s.Id))) { }
        if (steps.FirstOrDefault(s => !done.Contains(s.Id)) is { } stuck)
            root.Report(
                "takeApart",
                $"has no order: {string.Join(", which waits for ", Ring(stuck, byId, done))}",
                "break the ring in after or afterAny"
            );
    }

    /// <summary>A step that this one waits for; null when it can be done. A name that is no step holds nothing up.</summary>
    private static string? WaitsFor(TakeApartStep s, Dictionary<string, TakeApartStep> steps, HashSet<string> done)
    {
        bool IsOpen(string id) => steps.ContainsKey(id) && !done.Contains(id);
        if (s.After.FirstOrDefault(IsOpen) is { } first)
            return first;
        return s.AfterAny.IsEmpty || s.AfterAny.Any(g => !g.Any(IsOpen)) ? null : s.AfterAny[0].First(IsOpen);
    }

    /// <summary>The ring that a stuck step leads into, from a step back to itself.</summary>
    private static List<string> Ring(TakeApartStep stuck, Dictionary<string, TakeApartStep> steps, HashSet<string> done)
    {
        var way = new List<string>();
        var at = stuck.Id;
        while (!way.Contains(at, StringComparer.Ordinal))
        {
            way.Add(at);
            at = WaitsFor(steps[at], steps, done)!;
        }
        return [.. way.SkipWhile(id => id != at), at];
    }
}
