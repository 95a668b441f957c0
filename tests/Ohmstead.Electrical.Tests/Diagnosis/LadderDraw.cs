using Ohmstead.Electrical.Diagnosis;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// The diagnosis against an exhaustive sum: every set of the six faults of a small ladder, sizes on a dense grid, closed forms in
/// place of the solver. Marginals to 0.02, for units drawn by the chances and read with any of the readings.
/// </summary>
internal static class LadderDraw
{
    private const double Within = 0.02;

    /// <summary>Draws a unit, sums over all its sets, and holds the diagnosis to that.</summary>
    public static void Hold(string readings, int seed)
    {
        var values = Draw(readings.Split(' ').Select(r => r[0] - '0'), new Random(seed));
        var sum = new ExhaustiveSum(values);
        var result = Diagnoser.Run(
            SmallLadder.Unit.Model,
            SmallLadder.Taken(values),
            new DiagnosisOptions
            {
                RankNext = false,
                IsBenchAsNoted = true,
                WrongReadingChance = 1e-3,
            }
        );
        var wrong = new List<string>();
        foreach (var f in result.Faults)
        {
            var exact = sum.Marginal(f.Mode.Name);
            if (Math.Abs(exact - f.Probability) > Within)
                wrong.Add(FormattableString.Invariant($"{f.Mode.Name}: ours {f.Probability:F4}, sum {exact:F4}"));
        }
        if (Math.Abs(sum.Sound - result.SoundProbability) > Within)
            wrong.Add(FormattableString.Invariant($"sound: ours {result.SoundProbability:F4}, sum {sum.Sound:F4}"));
        Assert.Empty(wrong);
    }

    /// <summary>A unit drawn by chances and spread, read with an error evenly between the meter's limits.</summary>
    private static (int Reading, double Value)[] Draw(IEnumerable<int> readings, Random random)
    {
        var ohms = SmallLadder
            .Parts.Select(p => p.Ohms * Math.Exp(p.Sigma * MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, random.NextDouble())))
            .ToArray();
        for (var n = 0; n < ohms.Length; n++)
        {
            var (_, percent, value) = SmallLadder.Modes[n][random.Next(SmallLadder.Modes[n].Length)];
            // Three times the chances, so that something is wrong in most of them.
            if (random.NextDouble() < 0.03 * percent)
                ohms[n] = value ?? (SmallLadder.LeastSize * Math.Pow(SmallLadder.MostSize / SmallLadder.LeastSize, random.NextDouble()));
        }
        return [.. readings.Select(r => (r, Read(r, ohms, random)))];
    }

    private static double Read(int reading, double[] ohms, Random random)
    {
        var value = SmallLadder.Readings[reading].Of(ohms);
        return value + (SmallLadder.ErrorOf(reading).LimitAt(value) * ((2 * random.NextDouble()) - 1));
    }
}
