using System.Text;
using Ohmstead.Perf.Experiments.Limits;
using Ohmstead.Workshop.Listening;

namespace Ohmstead.Perf.Listening;

/// <summary>How well hum is heard, over made recordings: quiet and busy rooms, two microphones, both supplies.</summary>
internal static class HumExperiment
{
    /// <summary>Recordings of the page's table.</summary>
    public const int FullRecordings = 120;

    public static IReadOnlyList<Asked> Run(int recordings, int seed, StringBuilder page)
    {
        var heard = Enumerable.Range(0, recordings).Select(n => One(seed + n, n)).ToList();
        var (quiet, busy) = (heard.Where(h => !h.Busy).ToList(), heard.Where(h => h.Busy).ToList());
        Asked[] asked =
        [
            Asked.AtLeast("hum: the right supply, %", 100.0 * heard.Count(h => h.SupplyRight) / recordings, 100),
            Asked.AtMost("hum: greatest error of the supply’s frequency, Hz", heard.Max(h => h.HertzOff), 0.03),
            Asked.AtMost("hum: greatest error of line 2 in a quiet room, dB", quiet.Max(h => h.LevelOff), 0.5),
            Asked.AtMost("hum: greatest error of line 2 beside traffic or talk, dB", busy.Max(h => h.LevelOff), 2.5),
            Asked.AtMost("hum: greatest error of line 2 above the noise beside it, quiet room, dB", quiet.Max(h => h.FloorOff), 2),
            Asked.AtMost("hum: greatest error of a change between two recordings, quiet room, dB", quiet.Max(h => h.ChangeOff), 2),
            Asked.AtLeast("hum: the right verdict in a quiet room, %", 100.0 * quiet.Count(h => h.VerdictRight) / quiet.Count, 100),
        ];
        page.AppendLine(Asked.Heading);
        foreach (var figure in asked)
            page.AppendLine(figure.Row());
        return asked;
    }

    private static Heard One(int seed, int number)
    {
        var random = new Random(seed);
        var (nominal, odd, buzz, traffic, talk) = (
            number % 2 == 0 ? 60 : 50,
            number % 3 == 1,
            number % 5 == 1,
            number % 4 == 1,
            number % 4 == 3
        );
        var (seconds, supply, levels, floor) = (
            6 + (4 * random.NextDouble()),
            nominal + (0.1 * random.NextDouble()) - 0.05,
            MadeRecording.DrawLevels(random, odd, buzz),
            -68 + (6 * random.NextDouble())
        );
        MadeRecording Make(double[] of) => new(random, seconds, supply, of, floor, number % 2 == 0 ? 0 : 120, traffic, talk);
        var made = Make(levels);
        var recording = Listened(made);
        // The same room and telephone again, its hum louder or softer.
        var change = (16 * random.NextDouble()) - 8;
        var again = Listened(Make([levels[0], levels[1] + change, .. levels[2..]]));
        var heard = HumComparison.Of([("idle", recording), ("load", again)]).Changes[0].ChangeDb ?? double.NaN;
        var line = recording.Lines.FirstOrDefault(l => l.Harmonic == 2);
        string[] verdict =
        [
            "hum",
            .. IsOdd(made) ? ["odd lines"] : Array.Empty<string>(),
            .. IsBuzz(made) ? ["buzz"] : Array.Empty<string>(),
        ];
        return new(
            traffic || talk,
            recording.SupplyHertz == nominal,
            Math.Abs((recording.FoundHertz ?? 0) - made.Supply),
            Math.Abs((line?.LevelDb ?? 0) - made.Levels[1]),
            Math.Abs((line?.AboveFloorDb ?? 0) - (made.Levels[1] - floor)),
            Math.Abs(heard - change),
            verdict.SequenceEqual(recording.Verdict)
        );
    }

    private static HumRecording Listened(MadeRecording made)
    {
        var wave = made.ToWave();
        return HumRecording.Listen(() => new MemoryStream(wave)).Recording!;
    }

    private static bool IsOdd(MadeRecording made) => Math.Max(made.Levels[0], made.Levels[2]) > made.Levels[1] - 15;

    private static bool IsBuzz(MadeRecording made) =>
        10 * Math.Log10(made.Levels[7..].Sum(l => Math.Pow(10, l / 10))) > made.Levels[1] - 10;

    private sealed record Heard(
        bool Busy,
        bool SupplyRight,
        double HertzOff,
        double LevelOff,
        double FloorOff,
        double ChangeOff,
        bool VerdictRight
    );
}
