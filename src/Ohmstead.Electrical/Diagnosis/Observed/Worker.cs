using System.Collections.Concurrent;
using Ohmstead.Electrical.Diagnosis.Hypotheses;
using Ohmstead.Electrical.Diagnosis.Likelihoods;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Diagnosis.Observed;

/// <summary>The scratch of one thread of a diagnosis.</summary>
internal sealed class Worker(ReadingSet set, SolvedWaves? waves = null)
{
    private readonly Stack<Judgement> judgements = [];
    private double[] residuals = [];
    private readonly double[][] scratch =
    [
        [],
        [],
        [],
        [],
    ];

    public Predictor Predictor { get; } = new(set, waves);

    /// <summary>
    /// The readings of a set of faults on the meter's scale. Where <paramref name="changed"/> is given, readings that the change cannot move
    /// are copied from <paramref name="from"/>; a fault without a size may lay open what was hidden, so what it moves is solved again. A
    /// reading that cannot be solved stays as it was, too: it speaks neither for the change nor against it.
    /// </summary>
    public double[] Predict(Members set, double[] from, FaultClass? changed = null)
    {
        using var unit = Predictor.Assume(set.Faults());
        var t = new double[from.Length];
        foreach (var r in Predictor.Set.InGroups)
            t[r] = (changed is null || changed.Moves[r] || set.AreRewired(r) ? unit.Scaled(r) : null) ?? from[r];
        return t;
    }

    /// <summary>One that nobody holds, until it is disposed of.</summary>
    public Judgement Judgement(Evidence evidence, Spread spread) =>
        (judgements.TryPop(out var idle) ? idle : new Judgement(this)).On(evidence, spread);

    /// <summary>One that was disposed of.</summary>
    public void TakeBack(Judgement judgement) => judgements.Push(judgement);

    public Span<double> Residuals(int n)
    {
        if (residuals.Length < n)
            residuals = new double[n];
        return residuals.AsSpan(0, n);
    }

    public Span<double> Scratch(int which, int n)
    {
        if (scratch[which].Length < n)
            scratch[which] = new double[n];
        return scratch[which].AsSpan(0, n);
    }
}

/// <summary>A few workers that share out independent pieces; results are stored by piece, so their order does not matter.</summary>
/// <param name="set">The readings.</param>
/// <param name="threads">How many at once.</param>
/// <param name="known">What was solved before by workers of the same readings and medians; null for nothing.</param>
internal sealed class Workers(ReadingSet set, int threads, SolvedWaves? known = null)
{
    private readonly ConcurrentBag<Worker> idle = [];
    private readonly SolvedWaves waves = known ?? new();

    /// <summary>Does every piece; returns when all are done.</summary>
    public void Each(int count, Action<int, Worker> piece)
    {
        if (count == 0)
            return;
        if (threads <= 1 || count == 1)
        {
            var worker = Take();
            for (var n = 0; n < count; n++)
                piece(n, worker);
            idle.Add(worker);
            return;
        }
        Parallel.For(
            0,
            count,
            new ParallelOptions { MaxDegreeOfParallelism = threads },
            Take,
            (n, _, worker) =>
            {
                piece(n, worker);
                return worker;
            },
            idle.Add
        );
    }

    /// <summary>Does one piece.</summary>
    public T One<T>(Func<Worker, T> piece)
    {
        var worker = Take();
        var result = piece(worker);
        idle.Add(worker);
        return result;
    }

    private Worker Take() => idle.TryTake(out var worker) ? worker : new Worker(set, waves);

    /// <summary>Readings solved by all workers.</summary>
    public long Solved => idle.Sum(w => w.Predictor.Solved);

    /// <summary>What they cost, in readings without a rectifier.</summary>
    public long Work => idle.Sum(w => w.Predictor.Work);
}
