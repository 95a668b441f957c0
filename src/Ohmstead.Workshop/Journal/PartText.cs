using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Journal;

/// <summary>What the JSON in the fact of a changed part says (docs/formats.md): read here and nowhere else.</summary>
internal static class PartText
{
    /// <summary>What the fact changes in the circuit; nothing where it says only how new a part is.</summary>
    /// <param name="problems">What is wrong with the part is added.</param>
    public static IEnumerable<UnitChange> Changes(PartChanged fact, List<Problem> problems)
    {
        var path = $"$.{fact.Element}";
        if (fact.Change is PartChange.Removed)
            return [new PartRemoved(path, fact.Element)];
        if (fact.Part is not { } json)
            return [];
        var part = new JsonCursor(json, path, problems);
        return fact.Change switch
        {
            PartChange.Replaced when PartFile.Read(part) is { } other => [new PartReplaced(path, other)],
            PartChange.Added when PartFile.Read(part) is { } more => [new PartAdded(path, more)],
            PartChange.Moved when json.ValueKind == JsonValueKind.Object => json.EnumerateObject()
                .Select(e => new EndMoved(path, $"{fact.Element}.{e.Name}", part.At(e.Name).AsWord())),
            _ => [],
        };
    }

    /// <summary>The ends ("from", "to", "tap-1") that the fact puts on terminals: those that moved, or all of a part that is new.</summary>
    public static IEnumerable<(string Which, string Terminal)> Ends(PartChanged fact)
    {
        if (fact.Part is not { ValueKind: JsonValueKind.Object } part)
            yield break;
        foreach (var field in part.EnumerateObject())
        {
            if (
                field.Value.ValueKind == JsonValueKind.String
                && (field.Name is "from" or "to" || field.Name.StartsWith("tap-", StringComparison.Ordinal))
            )
                yield return (field.Name, field.Value.GetString()!);
            if (field.Name != "taps" || field.Value.ValueKind != JsonValueKind.Array)
                continue;
            var n = 0;
            foreach (var tap in field.Value.EnumerateArray())
            {
                n++;
                if (tap.ValueKind == JsonValueKind.Object && tap.TryGetProperty("to", out var to) && to.ValueKind == JsonValueKind.String)
                    yield return (FormattableString.Invariant($"tap-{n}"), to.GetString()!);
            }
        }
    }
}
