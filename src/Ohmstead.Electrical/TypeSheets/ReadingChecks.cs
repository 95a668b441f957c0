using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What must hold of the readings of a sheet: their states name what is there, and none comes before what it needs.</summary>
internal static class ReadingChecks
{
    public static void Run(JsonCursor root, TypeSheet sheet)
    {
        ReadingStates(root, sheet);
        Needs(root, sheet);
    }

    private static string At(string list, int n) => string.Create(CultureInfo.InvariantCulture, $"{list}[{n}]");

    private static void ReadingStates(JsonCursor root, TypeSheet sheet)
    {
        for (var n = 0; n < sheet.Readings.Length; n++)
        {
            var r = sheet.Readings[n];
            var at = At("readings", n);
            foreach (var p in ControlProblems(sheet, r.State.Controls))
                root.Report($"{at}.state.controls.{p.Path}", p.Wrong, p.Right);
            foreach (var id in r.State.Lifted.Where(id => !sheet.Elements.Any(e => e.Id == id)))
                root.Report($"{at}.state.lifted", $"\"{id}\" is no element", "name elements of the sheet");
            if (r.Access != ReadingSpec.Closed && !sheet.TakeApart.Any(s => s.Id == r.Access))
                root.Report($"{at}.access", $"\"{r.Access}\" is no take-apart step", "\"closed\" or the id of a step is expected");
            if (r.State.Source is { } s && AreJoined(r.State.Joined, s.From, s.To))
                root.Report(
                    $"{at}.state.source",
                    "stands across terminals that are joined",
                    "a source must not be short-circuited by a strap"
                );
        }
    }

    /// <summary>True when straps lead from one terminal to the other.</summary>
    private static bool AreJoined(ImmutableArray<ImmutableArray<string>> straps, string from, string to)
    {
        var reached = new HashSet<string>(StringComparer.Ordinal) { from };
        while (true)
        {
            var before = reached.Count;
            foreach (var strap in straps.Where(j => j.Any(reached.Contains)))
                reached.UnionWith(strap);
            if (reached.Contains(to))
                return true;
            if (reached.Count == before)
                return false;
        }
    }

    /// <summary>What is wrong with control positions, with the control's id as the path.</summary>
    public static IEnumerable<Problem> ControlProblems(TypeSheet sheet, ImmutableDictionary<string, ControlPosition> controls)
    {
        foreach (var (id, position) in controls.OrderBy(c => c.Key, StringComparer.Ordinal))
        {
            var control = sheet.Controls.FirstOrDefault(c => c.Id == id);
            if (control is null)
                yield return new Problem(id, "is no control of the sheet", "one of " + string.Join(", ", sheet.Controls.Select(c => c.Id)));
            else if (control.IsThrottle && position.Selector.Length > 0)
                yield return new Problem(id, $"is \"{position.Selector}\"", "a throttle stands at a number from 0 to 1");
            else if (!control.IsThrottle && !control.Positions.Contains(position.Selector))
                yield return new Problem(id, "is none of its positions", "one of " + string.Join(", ", control.Positions));
        }
    }

    private static void Needs(JsonCursor root, TypeSheet sheet)
    {
        var byId = sheet.Readings.DistinctBy(r => r.Id, StringComparer.Ordinal).ToDictionary(r => r.Id, StringComparer.Ordinal);
        var gates = sheet.Readings.Where(r => r.IsGate).Select(r => r.Id).ToImmutableArray();
        for (var n = 0; n < sheet.Readings.Length; n++)
        {
            var r = sheet.Readings[n];
            var at = At("readings", n);
            for (var k = 0; k < r.Needs.Length; k++)
            {
                if (!byId.TryGetValue(r.Needs[k], out var needed))
                    root.Report($"{at}.{At("needs", k)}", $"\"{r.Needs[k]}\" is no reading", "name readings of the sheet");
                else if (needed.Limits is null)
                    root.Report($"{at}.{At("needs", k)}", $"\"{r.Needs[k]}\" has no limits", "a reading that others need must have limits");
            }
            if (r.IsGate && r.Limits is null)
                root.Report($"{at}.limits", "is missing on a gate", "a gate must have limits");
            if (r.IsGate && r.State.Source is { IsMains: true })
                root.Report($"{at}.gate", "stands on a reading with a source above 30 V", "a gate is a cold check");
            var all = AllNeeds(r, byId);
            if (all.Contains(r.Id))
                root.Report($"{at}.needs", "lead back to the reading itself", "needs must not form a ring");
            if (r.State.Source is { IsMains: true } && !r.IsGate)
                foreach (var gate in gates.Where(g => !all.Contains(g)))
                    root.Report(
                        $"{at}.needs",
                        $"lacks the gate \"{gate}\"",
                        "a reading with a source above 30 V needs every gate, directly or through others"
                    );
        }
    }

    /// <summary>The readings that <paramref name="r"/> needs, directly or through others.</summary>
    private static HashSet<string> AllNeeds(ReadingSpec r, Dictionary<string, ReadingSpec> byId)
    {
        var all = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<string>(r.Needs);
        while (open.TryPop(out var id))
            if (all.Add(id) && byId.TryGetValue(id, out var next))
                foreach (var n in next.Needs)
                    open.Push(n);
        return all;
    }
}
