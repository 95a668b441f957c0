using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Sets of faults for the expected values of a drawn sheet: none, then one to four of any kind.</summary>
internal static class FaultSets
{
    public static List<string[]> Draw(Dice dice, JsonObject sheet)
    {
        List<string[]> sets =
        [
            [],
        ];
        int more = dice.Whole(1, 3);
        (JsonObject Element, FaultMode[] Modes)[] catalogue = [.. FaultCatalogue.Of(sheet)];
        string[] kinds = [.. catalogue.Select(entry => Kind(entry.Element)).Distinct()];
        for (int n = 0; n < more; n++)
        {
            Dictionary<string, string> faults = new(StringComparer.Ordinal);
            int count = dice.Whole(1, 4);
            while (faults.Count < count)
            {
                string kind = dice.Pick(kinds);
                (JsonObject element, FaultMode[] modes) = dice.Pick([.. catalogue.Where(entry => Kind(entry.Element) == kind)]);
                FaultMode mode = dice.Pick(modes);
                double? size = FaultCatalogue.Size(dice, element, mode);
                if (mode.Name == "open" && element.ContainsKey("turns") && dice.Chance(0.5))
                    size = Math.Floor(element.Number("turns") * dice.Between(0, 0.95));
                string id = element.Word("id");
                if (element["elements"].Words().Any(faults.ContainsKey) || Sharing(sheet, id).Any(faults.ContainsKey))
                    continue;
                faults[id] = new Fault(id, mode.Name, size is { } value ? Dice.Tidy(value) : null).ToString();
            }
            sets.Add([.. faults.Values]);
        }
        return sets;
    }

    /// <summary>The faults that a part shares with others: while one is there it has none of its own.</summary>
    private static IEnumerable<string> Sharing(JsonObject sheet, string id) =>
        sheet.Objects("sharedFaults").Where(f => f["elements"].Words().Contains(id)).Select(f => f.Word("id"));

    private static string Kind(JsonObject element) => element.Word("kind", element.ContainsKey("elements") ? "shared" : "slider");
}
