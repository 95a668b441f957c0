using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Ohmstead.Storage;

/// <summary>
/// The mark by which the entries of this copy of a workshop are known. It belongs to the folder where it lies: a folder that was copied
/// elsewhere, or brought back from a backup, is another bench from then on.
/// </summary>
internal static class BenchMark
{
    public const string Name = "this-bench.json";

    /// <summary>The mark of a folder, made where it has none of its own.</summary>
    /// <param name="at">Tells copies apart that came to one place one after the other.</param>
    public static string Of(string folder, DateTimeOffset at)
    {
        var (path, place) = (Path.Combine(folder, Name), Hash($"{Environment.MachineName}|{folder}", 32));
        if (Read(path) is { } kept && kept.Place == place)
            return kept.Bench;
        var made = new Kept(Hash(string.Create(CultureInfo.InvariantCulture, $"{place}|{at.UtcTicks}"), 8), place);
        File.WriteAllText(path, JsonSerializer.Serialize(made) + "\n");
        return made.Bench;
    }

    /// <summary>The mark that a folder says of itself; empty where it says none.</summary>
    public static string Said(string folder) => Read(Path.Combine(folder, Name))?.Bench ?? "";

    private static Kept? Read(string path)
    {
        if (!File.Exists(path))
            return null;
        try
        {
            return JsonSerializer.Deserialize<Kept>(File.ReadAllText(path)) is { Bench.Length: > 0 } kept ? kept : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    private static string Hash(string text, int letters) =>
        Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)))[..letters];

    private sealed record Kept(string Bench, string Place);
}
