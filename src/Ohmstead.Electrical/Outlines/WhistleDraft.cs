namespace Ohmstead.Electrical.Outlines;

/// <summary>Drafts a whistle lever: its contacts, its boost, its disc with the resistance wire across it.</summary>
internal sealed class WhistleDraft(WindingDraft windings, DraftParts parts)
{
    /// <returns>The terminal behind it.</returns>
    public string Draft(ThrottleBlock t, WhistleBlock w, string hub, string said)
    {
        var (s, feed) = (w.Suffix, $"feed-{t.Id}");
        var (control, plate, stud) = ($"whistle{s}", $"disc{s}-plate", $"disc{s}-stud");
        var lever = w.IsShared ? "the whistle lever" : $"the whistle lever of {said}";
        var isBare = w.Boost.Value == 0 && !w.IsShared;
        string[] called = [.. Positions(w).Where(p => w.IsShared ? p == $"{t.Id}-first" || p == $"{t.Id}-second" : p != "off")];
        if (t.Id == w.Throttles[0])
            parts.Selector(control, lever[4..], "off", [.. Positions(w).Select(p => (p, Said(w, p)))]);
        parts.Contact(
            $"run-{t.Id}",
            hub,
            feed,
            control,
            [.. Positions(w).Except(called, StringComparer.Ordinal)],
            $"rest contact of {lever}{Of(w, said)}"
        );
        if (w.FromWinding)
            parts.Name($"ahead-arm-{t.Id}", $"the whistle arm of {said}");
        if (!isBare)
            parts.Contact(
                $"kick-{t.Id}",
                w.FromWinding ? $"ahead-arm-{t.Id}" : hub,
                w.HasOwnWinding ? $"boost{s}-start" : plate,
                control,
                called,
                $"boost contact of {lever}{Of(w, said)}"
            );
        if (t.Id == w.Throttles[0])
            Disc(t, w, isBare ? hub : plate, stud, lever);
        parts.Contact($"out-{t.Id}", stud, feed, control, called, $"whistle contact of {lever}{Of(w, said)}");
        parts.Name(feed, $"the far side of the whistle lever of {said}");
        parts.Near.Add([hub, feed]);
        return feed;
    }

    private void Disc(ThrottleBlock t, WhistleBlock w, string plate, string stud, string lever)
    {
        var (s, of) = (w.Suffix, w.IsShared ? "" : $" of {DraftWords.Throttle(t.Id)}");
        var control = $"whistle{s}";
        if (w.HasOwnWinding)
        {
            windings.Boost($"boost{s}", w.Boost, t.On, $"boost winding{of}");
            parts.Joint($"joint-boost{s}", $"boost{s}-end", plate, $"joint at the outer end of the boost winding{of}");
        }
        parts.Cell($"disc{s}", plate, stud, w.Cell, $"whistle {ThrottleDraft.CellWord(w.Cell)}{of}");
        parts.Name(plate, $"the plate of the whistle {ThrottleDraft.CellWord(w.Cell)}{of}");
        parts.Name(stud, $"the stud of the whistle {ThrottleDraft.CellWord(w.Cell)}{of}");
        parts.Near.Add([plate, stud]);
        if (w.Steps < 2)
            return;
        parts.ResistanceWire($"ballast{s}", plate, $"ballast{s}-end", null, $"resistance wire of {lever}");
        parts.Name($"ballast{s}-end", $"the far end of the resistance wire{of}");
        parts.Contact(
            $"hold{s}",
            $"ballast{s}-end",
            stud,
            control,
            [.. Positions(w).Where(p => p == "second" || p.EndsWith("-second", StringComparison.Ordinal))],
            $"holding contact of {lever}"
        );
    }

    private static string Of(WhistleBlock w, string said) => w.IsShared ? $" for {said}" : "";

    /// <summary>The positions of a whistle lever; a shared one has those of each throttle.</summary>
    public static string[] Positions(WhistleBlock w)
    {
        string[] called = w.Steps == 2 ? ["first", "second"] : ["first"];
        return ["off", .. w.IsShared ? w.Throttles.SelectMany(t => called.Select(c => $"{t}-{c}")) : called];
    }

    private static string Said(WhistleBlock w, string position)
    {
        if (position == "off")
            return "off";
        var step = position.EndsWith("second", StringComparison.Ordinal) ? "second step" : "first step";
        return w.IsShared ? $"{step} for {DraftWords.Throttle(position[..position.LastIndexOf('-')])}" : step;
    }
}
