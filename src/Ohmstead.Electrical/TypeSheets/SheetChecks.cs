using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What must hold between the parts of a sheet whose single values are in order.</summary>
internal static class SheetChecks
{
    /// <param name="known">Terminals that may be left with one end: those of the sheet, when a unit of it is checked.</param>
    public static void Run(JsonCursor root, TypeSheet sheet, IReadOnlySet<string>? known = null)
    {
        Ids(root, sheet);
        Elements(root, sheet);
        SharedFaultChecks.Run(root, sheet);
        Terminals(root, sheet, known);
        ReadingChecks.Run(root, sheet);
        Observations(root, sheet);
        TakeApartChecks.Run(root, sheet);
    }

    private static string At(string list, int n) => string.Create(CultureInfo.InvariantCulture, $"{list}[{n}]");

    private static void Ids(JsonCursor root, TypeSheet sheet)
    {
        Twice(root, "cores", sheet.Cores.Select(c => c.Id));
        Twice(root, "controls", sheet.Controls.Select(c => c.Id));
        Twice(root, "elements", sheet.Elements.Select(e => e.Id));
        Twice(root, "readings", sheet.Readings.Select(r => r.Id));
        Twice(root, "observations", sheet.Observations.Select(o => o.Id));
        Twice(root, "takeApart", sheet.TakeApart.Select(s => s.Id));
        for (var n = 0; n < sheet.Elements.Length; n++)
            Marks(root, At("elements", n), sheet.Elements[n]);
        var elements = sheet.Elements.Select(e => e.Id).ToHashSet(StringComparer.Ordinal);
        for (var n = 0; n < sheet.Elements.Length; n++)
            if (sheet.Elements[n] is Winding w)
                for (var s = 0; s < w.Sliders.Length; s++)
                    if (!elements.Add(w.Sliders[s].Id))
                        root.Report(
                            $"{At("elements", n)}.{At("sliders", s)}.id",
                            $"\"{w.Sliders[s].Id}\" is used twice",
                            "every element and slider needs its own id"
                        );
    }

    /// <summary>Faults and mistakes are written with these marks between the names, as in <c>swap:A.to~B.to</c>.</summary>
    private static void Marks(JsonCursor root, string at, Element e)
    {
        void Refuse(string field, string name, string marks)
        {
            if (name.AsSpan().ContainsAny(marks))
                root.Report(
                    $"{at}.{field}",
                    $"\"{name}\" has one of {string.Join(' ', marks.AsEnumerable())} in it",
                    "these stand between names in faults and mistakes; choose another name"
                );
        }
        Refuse("id", e.Id, ":~=>");
        Refuse("from", e.From, "~>");
        Refuse("to", e.To, "~>");
        if (e is not Winding w)
            return;
        for (var n = 0; n < w.Taps.Length; n++)
            Refuse($"{At("taps", n)}.to", w.Taps[n].To, "~>");
        for (var n = 0; n < w.Sliders.Length; n++)
        {
            Refuse($"{At("sliders", n)}.id", w.Sliders[n].Id, ":~=>");
            Refuse($"{At("sliders", n)}.to", w.Sliders[n].To, "~>");
        }
    }

    private static void Twice(JsonCursor root, string list, IEnumerable<string> ids)
    {
        var seen = new HashSet<string>(StringComparer.Ordinal);
        var n = 0;
        foreach (var id in ids)
        {
            if (!seen.Add(id))
                root.Report($"{At(list, n)}.id", $"\"{id}\" is used twice", "every id may occur once");
            n++;
        }
    }

    private static void Elements(JsonCursor root, TypeSheet sheet)
    {
        for (var n = 0; n < sheet.Cores.Length; n++)
        {
            var core = sheet.Cores[n];
            if (!sheet.Windings.Any(w => w.Id == core.ReferenceWinding && w.Core == core.Id))
                root.Report(
                    $"{At("cores", n)}.referenceWinding",
                    $"\"{core.ReferenceWinding}\" is no winding on this core",
                    "name one of its windings"
                );
        }
        for (var n = 0; n < sheet.Elements.Length; n++)
        {
            var at = At("elements", n);
            if (sheet.Elements[n] is Winding w)
            {
                if (w.IsOnCore && !sheet.Cores.Any(c => c.Id == w.Core))
                    root.Report($"{at}.core", $"\"{w.Core}\" is no core", "name a core of the sheet");
                for (var s = 0; s < w.Sliders.Length; s++)
                    if (!sheet.Controls.Any(c => c.Id == w.Sliders[s].Control && c.IsThrottle))
                        root.Report(
                            $"{at}.{At("sliders", s)}.control",
                            $"\"{w.Sliders[s].Control}\" is no throttle",
                            "name a control of kind throttle"
                        );
            }
            if (sheet.Elements[n] is Switch k)
                SwitchPositions(root, sheet, at, k);
        }
    }

    private static void SwitchPositions(JsonCursor root, TypeSheet sheet, string at, Switch k)
    {
        var control = sheet.Controls.FirstOrDefault(c => c.Id == k.Control && !c.IsThrottle);
        if (control is null)
        {
            root.Report($"{at}.control", $"\"{k.Control}\" is no selector", "name a control of kind selector");
            return;
        }
        for (var p = 0; p < k.ClosedIn.Length; p++)
            if (!control.Positions.Contains(k.ClosedIn[p]))
                root.Report(
                    $"{at}.{At("closedIn", p)}",
                    $"\"{k.ClosedIn[p]}\" is no position of {control.Id}",
                    "one of " + string.Join(", ", control.Positions)
                );
    }

    private static void Terminals(JsonCursor root, TypeSheet sheet, IReadOnlySet<string>? known)
    {
        var ends = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var e in sheet.Elements)
        foreach (var t in e.OtherTerminals.Append(e.From).Append(e.To))
            ends[t] = ends.GetValueOrDefault(t) + 1;
        var used = sheet.Near.SelectMany(g => g).Concat(sheet.Readings.SelectMany(r => UsedBy(r))).ToHashSet(StringComparer.Ordinal);
        for (var n = 0; n < sheet.Elements.Length; n++)
        {
            var e = sheet.Elements[n];
            foreach (var (field, t) in new[] { ("from", e.From), ("to", e.To) }.Concat(e.OtherTerminals.Select(t => ("to", t))))
                if (ends[t] == 1 && !used.Contains(t) && known?.Contains(t) != true)
                    root.Report(
                        $"{At("elements", n)}.{field}",
                        $"terminal \"{t}\" occurs once and nothing uses it",
                        "a mistyped name? connect it, or read at it"
                    );
        }
        for (var n = 0; n < sheet.Readings.Length; n++)
            foreach (var t in UsedBy(sheet.Readings[n]).Where(t => !ends.ContainsKey(t)).Distinct(StringComparer.Ordinal))
                root.Report(At("readings", n), $"terminal \"{t}\" is not in the circuit", "use a terminal that an element has");
        for (var n = 0; n < sheet.Near.Length; n++)
            foreach (var t in sheet.Near[n].Where(t => !ends.ContainsKey(t)))
                root.Report(At("near", n), $"terminal \"{t}\" is not in the circuit", "use a terminal that an element has");
    }

    private static IEnumerable<string> UsedBy(ReadingSpec r)
    {
        if (r.From.Length > 0)
            yield return r.From;
        if (r.To.Length > 0)
            yield return r.To;
        if (r.State.Source is { } s)
        {
            yield return s.From;
            yield return s.To;
        }
        foreach (var l in r.State.Loads)
        {
            yield return l.From;
            yield return l.To;
        }
        foreach (var t in r.State.Joined.SelectMany(j => j))
            yield return t;
    }

    private static void Observations(JsonCursor root, TypeSheet sheet)
    {
        var known = sheet
            .PartIds.SelectMany(id => sheet.KindOf(id)!.Value.Faults().Select(m => $"{id}:{m.Mode}"))
            .Concat(sheet.SharedFaults.Select(f => $"{f.Id}:{f.Mode}"))
            .ToHashSet(StringComparer.Ordinal);
        for (var n = 0; n < sheet.Observations.Length; n++)
            foreach (var (fault, _) in sheet.Observations[n].Given.Where(g => !known.Contains(g.Fault)))
                root.Report(
                    $"{At("observations", n)}.given",
                    $"\"{fault}\" is no fault of this sheet",
                    "element:mode is expected, as in the fault table"
                );
    }
}
