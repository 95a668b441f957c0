using System.Text.Json.Nodes;

namespace Ohmstead.App.Tests.Commands;

/// <summary>What every refusal looks like, and ways to spoil a good file.</summary>
internal static class Refusal
{
    /// <summary>Exit status 2, nothing on standard output, and a line <c>FILE: PLACE…</c> with what is wrong; what would be right.</summary>
    public static void Expect(string path, string place, params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.True(code == 2, output + error);
        Assert.Equal("", output);
        var line = error.Split('\n').FirstOrDefault(l => l.StartsWith($"{path}: {place}", StringComparison.Ordinal));
        Assert.True(line is not null, error);
        Assert.Contains("; ", line, StringComparison.Ordinal);
        NoTrace(error);
    }

    public static void NoTrace(string error)
    {
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
    }

    /// <summary>The sample sheet with one value put in place of another; null takes the field away.</summary>
    public static string SampleWith(string path, string json)
    {
        var sheet = JsonNode.Parse(File.ReadAllText(Tool.Sample))!;
        Set(sheet, path, JsonNode.Parse(json));
        return sheet.ToJsonString();
    }

    public static void Set(JsonNode root, string path, JsonNode? value)
    {
        var parts = path.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        var at = root;
        foreach (var part in parts[..^1])
            at = Step(at, part);
        if (parts[^1].StartsWith('['))
            at.AsArray()[Index(parts[^1])] = value;
        else if (value is null)
            at.AsObject().Remove(parts[^1]);
        else
            at[parts[^1]] = value;
    }

    private static JsonNode Step(JsonNode at, string part) => part.StartsWith('[') ? at[Index(part)]! : at[part]!;

    private static int Index(string part) => int.Parse(part.Trim('[', ']'), System.Globalization.CultureInfo.InvariantCulture);
}
