using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Merging;

/// <summary>What of a unit is said once, so that the last entry counts, and what counts each time.</summary>
internal static class Registers
{
    /// <summary>What an entry says, where the last one of it counts; empty for all other facts.</summary>
    public static string Key(Fact fact) =>
        fact switch
        {
            FindingJudged f => $"finding {f.Element}:{f.Mode}",
            PartDecided d => $"decided {d.About}:{d.Mode}",
            SignAnswered s => $"sign {s.ObservationId}",
            ConditionNoted c => $"part {c.Item}",
            NotLookedAt n => $"part {n.Item}",
            LooksNoted l => $"looks {l.Item}",
            DetailSeen d => $"detail {d.Detail}",
            PlateRead => "plate",
            TerminalNamed t => $"terminal {t.Id}",
            SheetKept k => $"sheet {k.SheetId}",
            CarriedOver c => $"carried {c.SheetId}",
            StageClosed s => $"stage {s.Stage}",
            Returned => "returned",
            WayChosen => "way",
            JointSeen j => $"joint {j.As} {j.Terminal}",
            LayoutStated => "layout",
            EstimateMade => "estimate",
            GoAheadGiven => "go-ahead",
            Billed => "billed",
            LoadForHours => "load",
            ReadingWaived w => $"waived {w.ReadingId}",
            CardChanged => "card",
            _ => "",
        };

    /// <summary>What it says of that. Two that say the same contradict nothing, whatever words stand beside it.</summary>
    public static string Value(Fact fact) =>
        fact switch
        {
            FindingJudged f => f.Judgement.ToString(),
            StageClosed s => s.IsClosed ? "closed" : "open",
            Returned r => r.Manner.ToString(),
            ReadingWaived => "waived",
            DetailSeen d => d.Shows,
            _ => FactText.Write(fact),
        };

    /// <summary>What was read, where two readings of one minute must agree; empty for all other facts.</summary>
    public static (string Key, string Value) Reading(Fact fact) =>
        fact switch
        {
            ReadingEntered r => ($"reading {r.ReadingId}", FactText.Write(r with { Bench = BenchState.AsSheet, Title = null })),
            TestRead t => ($"test {t.Test}", FactText.Write(t)),
            WireChecked w => ($"wire {string.Join(' ', w.First)}|{string.Join(' ', w.Second)}", FactText.Write(w)),
            SweepTaken s => ($"sweep {s.ReadingId} {s.Control}", FactText.Write(s)),
            _ => ("", ""),
        };

    /// <summary>What is done to a unit once; empty for all other facts.</summary>
    public static string Deed(Fact fact) =>
        fact switch
        {
            PartChanged p => $"part {p.Element}",
            TakenOff o => $"off {o.Step}",
            PutBack b => $"back {b.Step}",
            HeatRunBegun => "heat run",
            _ => "",
        };

    /// <summary>True for what is done on a unit that is on the bench.</summary>
    public static bool IsWork(Fact fact) =>
        fact
            is PartChanged
                or ReadingEntered
                or TestRead
                or WireChecked
                or SweepTaken
                or PowerTried
                or TakenOff
                or PutBack
                or JointSeen
                or FindingJudged
                or ConditionNoted
                or HeatRunBegun
                or BreakerStarted
                or RewireChecked;
}
