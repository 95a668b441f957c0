using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>A batch of the drawer: which units carry a part of it, whom to call, and the verdict of the question <c>batch</c>.</summary>
/// <param name="Parts">Where its parts went, last first.</param>
/// <param name="Answer">Null while none of it is in a unit.</param>
public sealed record BatchCall(Bin Bin, DrawerBatch Batch, ImmutableArray<FittedPart> Parts, BatchAnswer? Answer)
{
    private const double DaysInYear = 365.25;

    /// <summary>The parts of it that still work in a unit: their owners are those to call.</summary>
    public IEnumerable<FittedPart> StillOut => Parts.Where(p => p.EndedAt is null);

    /// <summary>The verdict, in words.</summary>
    public string Verdict => Answer?.Words[0] ?? "No part of this batch is in a unit yet.";

    /// <summary>True for a batch to do something about: its owners are called, or it is watched.</summary>
    public bool StandsOut => Answer is { Verdict: "suspect" or "watch" };

    /// <summary>Every batch with a part in a unit, also of a bin that was removed; those that stand out first, then the newest.</summary>
    public static ImmutableArray<BatchCall> All(Drawer drawer, DateTimeOffset now) =>
        [
            .. drawer
                .Bins.Concat(drawer.Removed)
                .Where(b => drawer.WhereUsed(b.Id).Any())
                .SelectMany(b => b.Batches.Select(batch => Of(drawer, b, batch, now)))
                .Where(c => !c.Parts.IsEmpty)
                .OrderByDescending(c => c.Answer!.Verdict == "suspect")
                .ThenByDescending(c => c.StandsOut)
                .ThenByDescending(c => c.Batch.Date),
        ];

    /// <summary>The batch of an id; null where there is none.</summary>
    public static BatchCall? Find(Drawer drawer, Guid batch, DateTimeOffset now) =>
        drawer.Bins.Concat(drawer.Removed).FirstOrDefault(b => b.Batches.Any(a => a.Id == batch)) is { } bin
            ? Of(drawer, bin, bin.Batches.First(a => a.Id == batch), now)
            : null;

    /// <summary>One batch.</summary>
    public static BatchCall Of(Drawer drawer, Bin bin, DrawerBatch batch, DateTimeOffset now)
    {
        ImmutableArray<FittedPart> parts = [.. drawer.WhereUsed(bin.Id).Where(f => f.From.Batch == batch.Id)];
        return new(
            bin,
            batch,
            parts,
            parts.IsEmpty ? null : (BatchAnswer)QuestionFile.Read(Question(drawer, bin, batch, now), null).Question!.Answer()
        );
    }

    /// <summary>The question as a file: <c>ohmstead reckon</c> answers the same.</summary>
    public static string Question(Drawer drawer, Bin bin, DrawerBatch batch, DateTimeOffset now)
    {
        var (own, others) = (
            drawer.WhereUsed(bin.Id).Where(f => f.From.Batch == batch.Id).ToList(),
            drawer.WhereUsed(bin.Id).Where(f => f.From.Batch != batch.Id).ToList()
        );
        return JsonSerializer.Serialize(
            new
            {
                ohmstead = QuestionFile.Mark,
                question = "batch",
                batch = Counts(own, now),
                others = Counts(others, now),
                batchesLookedAt = Math.Max(1, drawer.WhereUsed(bin.Id).Select(f => f.From.Batch).Distinct().Count()),
                stillOut = own.Where(f => f.EndedAt is null).Sum(f => f.From.Count),
            },
            TypeSheetFile.Indented
        );
    }

    /// <summary>What the verdict rests on, in sentences.</summary>
    public ImmutableArray<string> Reasons(Drawer drawer, DateTimeOffset now)
    {
        if (Answer is not { } answer)
            return [];
        var (own, others) = (Tally(Parts, now), Tally(drawer.WhereUsed(Bin.Id).Where(f => f.From.Batch != Batch.Id), now));
        return
        [
            $"{ValueText.Plain(own.Failed)} of {ValueText.Plain(own.Fitted)} failed in {Years(own.Years)} of use.",
            others.Fitted == 0
                ? "No part of another batch is in a unit yet, to compare it with."
                : $"Of other batches {ValueText.Plain(others.Failed)} of {ValueText.Plain(others.Fitted)} failed in {Years(others.Years)}.",
            .. own.Failed > 0
                ? (ImmutableArray<string>)
                    [
                        $"So many by luck alone: {Percent(answer.ChanceByLuckPercent)}; as the worst of all batches looked at: {Percent(answer.ChanceByLuckAllBatchesPercent)}.",
                        $"Worse than twice the others: {Percent(answer.ChanceWorseByFactorPercent)}.",
                    ]
                : [],
            $"One more within a year: {Percent(answer.ChanceOfOneMorePercent)}.",
        ];
    }

    private static object Counts(IEnumerable<FittedPart> parts, DateTimeOffset now)
    {
        var (fitted, failed, years) = Tally(parts, now);
        return new
        {
            fitted,
            failed,
            years,
        };
    }

    private static (int Fitted, int Failed, double Years) Tally(IEnumerable<FittedPart> parts, DateTimeOffset now)
    {
        var (fitted, failed, years) = (0, 0, 0.0);
        foreach (var part in parts)
        {
            fitted += part.From.Count;
            failed += part.HasFailed ? part.From.Count : 0;
            years += part.From.Count * Math.Max(0, ((part.EndedAt ?? now) - part.At).TotalDays / DaysInYear);
        }
        return (fitted, failed, years);
    }

    private static string Years(double years) =>
        years < 0.95 ? Counted.Of((long)Math.Ceiling(years * 12), "month") : $"{ValueText.Plain(Math.Round(years, 1))} years";

    private static string Percent(double percent) => percent is > 0 and < 1 ? "under 1 %" : $"{ValueText.Plain(Math.Round(percent))} %";
}
