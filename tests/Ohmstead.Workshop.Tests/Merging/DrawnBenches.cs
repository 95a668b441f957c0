using System.Collections.Immutable;
using Ohmstead.Workshop.Dating;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;

namespace Ohmstead.Workshop.Tests.Merging;

/// <summary>
/// Three copies of one workshop, worked on apart and now and then merged, as drawn: readings, corrections and corrections of them, undos,
/// closed stages, renamed tags, one tag given to two units, type sheets and settings changed, clocks that are wrong and jump.
/// </summary>
internal sealed class DrawnBenches
{
    private static readonly DateTimeOffset Noon = new(2026, 3, 4, 12, 0, 0, TimeSpan.Zero);
    private static readonly string[] Marks = ["aaaa", "bbbb", "cccc"];
    private readonly WorkshopContent[] benches = [WorkshopContent.Empty, WorkshopContent.Empty, WorkshopContent.Empty];
    private readonly int[] skewMinutes = new int[3];
    private uint state;
    private int ids;
    private int minute;

    private DrawnBenches(uint seed) => state = seed * 2654435761u + 1;

    public static ImmutableArray<WorkshopContent> Draw(uint seed)
    {
        var drawn = new DrawnBenches(seed);
        drawn.Begin();
        for (var n = 10 + drawn.Next(30); n > 0; n--)
            drawn.Step();
        return [.. drawn.benches];
    }

    private int Next(int below)
    {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        return (int)(state % (uint)below);
    }

    private Guid Id() => new(Next(9), 0, 0, [.. BitConverter.GetBytes(++ids), 0, 0, 0, 0]);

    private void Begin()
    {
        for (var unit = 0; unit < 2; unit++)
            Enter(
                0,
                new Guid(99, 0, 0, [(byte)unit, 0, 0, 0, 0, 0, 0, 0]),
                new TakenIn(FormattableString.Invariant($"T-{unit}"), "", "", "")
            );
        benches[1] = benches[2] = benches[0];
        for (var bench = 0; bench < 3; bench++)
            skewMinutes[bench] = Next(3) == 0 ? Next(400) - 200 : 0;
    }

    private void Step()
    {
        var bench = Next(3);
        minute += Next(4) == 0 ? 0 : Next(30);
        if (Next(12) == 0)
            skewMinutes[bench] += Next(200) - 100;
        if (Next(9) == 0)
            benches[bench] = benches[bench].Merge(benches[Next(3)]);
        else if (Next(9) == 0)
            Enter(bench, Id(), new TakenIn(FormattableString.Invariant($"T-{Next(3)}"), "", "", ""));
        else if (Next(8) == 0)
            Save(bench);
        else
        {
            var unit = benches[bench].Units.Keys.ElementAt(Next(benches[bench].Units.Count));
            Enter(bench, unit, Fact(benches[bench].Units[unit]));
        }
    }

    private void Enter(int bench, Guid unit, Fact fact)
    {
        var journal = benches[bench].Units.GetValueOrDefault(unit, []);
        var entry = Lineage.Append(
            journal,
            unit,
            new NewEntry(Id(), Noon.AddMinutes(minute + skewMinutes[bench]), "bench", fact),
            Marks[bench]
        );
        benches[bench] = benches[bench] with { Units = benches[bench].Units.SetItem(unit, journal.Add(entry)) };
    }

    private void Save(int bench)
    {
        if (Next(2) == 0)
        {
            SaveDates(bench);
            return;
        }
        var key = Next(2) == 0 ? ("sheet", FormattableString.Invariant($"type-{Next(2)}")) : ("shop", Marks[bench]);
        var version = DocumentHistory.Of([new(Noon.AddMinutes(minute), FormattableString.Invariant($"text {Next(4)}"))]);
        var kept = benches[bench].Documents;
        benches[bench] = benches[bench] with
        {
            Documents = kept.SetItem(key, kept.TryGetValue(key, out var before) ? before.Merge(key.Item1, version) : version),
            Photos = benches[bench].Photos.Add(FormattableString.Invariant($"photo {Next(9)}")),
        };
    }

    /// <summary>Saved as a bench does: the last of its own counts there, whatever its clock says.</summary>
    private void SaveDates(int bench)
    {
        var key = (KindDates.DocumentKind, FormattableString.Invariant($"type-{Next(2)}"));
        var history = benches[bench].Documents.GetValueOrDefault(key);
        var now = history is null ? KindDates.None : KindDates.Read(history.Counting.Text)!;
        var version = new DocumentVersion(Noon.AddMinutes(minute + skewMinutes[bench]), KindDates.Write(DrawnDates.Change(now, Next)));
        var kept = history is null ? [version] : history.Versions.Append(version).ToList();
        benches[bench] = benches[bench] with
        {
            Documents = benches[bench].Documents.SetItem(key, DocumentHistory.Kept(key.DocumentKind, [.. kept])),
        };
    }

    private Fact Fact(ImmutableArray<Entry> journal) =>
        Next(10) switch
        {
            0 or 1 => new Corrected(journal[Next(journal.Length)].Id, null),
            2 => new Corrected(journal[Next(journal.Length)].Id, new Noted(FormattableString.Invariant($"right {Next(3)}"))),
            3 => new FindingJudged("roller", "worn", Next(2) == 0 ? Judgement.Confirmed : Judgement.Dismissed, ""),
            4 => new StageClosed((Stage)Next(7), Next(2) == 0, ""),
            5 => new CardChanged(
                FormattableString.Invariant($"T-{Next(3)}"),
                "",
                FormattableString.Invariant($"owner {Next(2)}"),
                "",
                "",
                ""
            ),
            6 => new PartChanged("roller", PartChange.Renewed, null, ""),
            7 => new Settled([journal[Next(journal.Length)].Id, journal[Next(journal.Length)].Id], ""),
            8 => new Returned(ReturnManner.Working, ""),
            _ => new ReadingEntered("left-full", Shown.Number(Next(3)), BenchState.AsSheet),
        };
}
