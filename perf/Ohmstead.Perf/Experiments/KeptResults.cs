using System.Collections.Concurrent;
using System.Security.Cryptography;
using System.Text.Json;

namespace Ohmstead.Perf.Experiments;

/// <summary>Results of a long run, each on the disk as soon as it is there, so that a run can be taken up where it stopped.</summary>
internal sealed class KeptResults
{
    private readonly ConcurrentDictionary<string, string> kept = new(StringComparer.Ordinal);
    private readonly Lock writing = new();
    private readonly string file;

    public KeptResults(string file)
    {
        this.file = file;
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        // A line that was cut off when the run ended has no end, or no tab.
        foreach (var line in File.Exists(file) ? File.ReadAllLines(file) : [])
            if (line.Split('\t') is [var key, var text, "."])
                kept[key] = text;
    }

    /// <summary>Results of this method of diagnosis, which is told by the answers that it is held to: with others, a run begins anew.</summary>
    public static KeptResults OfDiagnosis(string root)
    {
        var method = Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(root, PinnedAnswers.File))));
        return new(Path.Combine(root, ".build/diagnosed", $"results-{method[..16]}.tsv"));
    }

    /// <summary>What was kept by this name, or what the work gives, which is kept.</summary>
    public T Of<T>(string key, Func<T> work)
    {
        if (kept.TryGetValue(key, out var text))
            return JsonSerializer.Deserialize<T>(text)!;
        var made = work();
        text = JsonSerializer.Serialize(made);
        lock (writing)
            File.AppendAllText(file, $"{key}\t{text}\t.\n");
        kept[key] = text;
        return made;
    }
}
