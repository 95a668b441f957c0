using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Outlines as text: reading with every problem found at once.</summary>
public static class OutlineFile
{
    /// <summary>The mark of the format, in the field <c>ohmstead</c>.</summary>
    public const string Mark = "outline/1";

    /// <summary>True for a text that says it is an outline.</summary>
    public static bool IsOne(string text) =>
        JsonCursor.TryOpen(text, [], out var root)
        && root.Has("ohmstead")
        && root.At("ohmstead").Element is { ValueKind: System.Text.Json.JsonValueKind.String } mark
        && mark.GetString() == Mark;

    /// <summary>Reads an outline and drafts a sheet of every kind of unit that it may stand for.</summary>
    /// <returns>The kinds, or all problems, each with its JSON path. A choice that contradicts the rest is no kind; only where all do, the first one's problems are given.</returns>
    public static Parsed<OutlineKinds> Read(string text)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        TypeSheetFile.CheckMark(root, Mark);
        if (problems.Count > 0)
            return new(null, problems);
        var texts = OpenWords.Candidates((JsonObject)JsonNode.Parse(text)!, problems);
        if (problems.Count > 0)
            return new(null, problems);
        var kinds = ImmutableArray.CreateBuilder<OutlineKind>();
        IReadOnlyList<Problem> first = [];
        foreach (var ((outline, choices), n) in texts.Select((t, n) => (t, n)))
        {
            var read = ReadWhole(outline);
            if (n == 0)
                first = read.Problems;
            if (read.IsSound)
                kinds.Add(
                    new OutlineKind(
                        (n + 1).ToString(CultureInfo.InvariantCulture),
                        choices,
                        read.Value!.Outline,
                        read.Value.Sheet,
                        read.Value.Values
                    )
                );
        }
        return kinds.Count == 0
            ? new(null, first)
            : new(new OutlineKinds([.. kinds.Select(k => k with { Chance = 1.0 / kinds.Count })]), []);
    }

    private sealed record Whole(Outline Outline, TypeSheet Sheet, ImmutableArray<DraftedValue> Values);

    private static Parsed<Whole> ReadWhole(JsonObject outline)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(outline.ToJsonString(), problems, out var root))
            return new(null, problems);
        var read = OutlineReader.Read(root);
        if (problems.Count == 0)
            OutlineChecks.Run(root, read);
        if (problems.Count > 0)
            return new(null, problems);
        var (document, values) = SheetDraft.Of(read);
        var sheet = TypeSheetFile.Read(document.ToJsonString());
        // What the checks above let through can still give two parts one name.
        return sheet.IsSound
            ? new(new Whole(read, sheet.Required, values), [])
            : new(
                null,
                [
                    .. sheet
                        .Problems.Select(p => new Problem(
                            "$.blocks",
                            $"make a sheet that is refused: {p.Path[2..]} {p.Wrong}",
                            "give posts, windings and throttles names that differ"
                        ))
                        .Take(3),
                ]
            );
    }
}

/// <summary>The kinds of unit that an outline may stand for; one where every word is known.</summary>
public sealed record OutlineKinds(ImmutableArray<OutlineKind> Kinds);

/// <summary>One kind of unit that an outline may stand for.</summary>
/// <param name="Choices">What was chosen for each unknown word, by its path.</param>
/// <param name="Sheet">The wide sheet: what is known before any reading.</param>
/// <param name="Values">Where its numbers come from.</param>
public sealed record OutlineKind(
    string Id,
    ImmutableSortedDictionary<string, string> Choices,
    Outline Outline,
    TypeSheet Sheet,
    ImmutableArray<DraftedValue> Values
)
{
    /// <summary>Its chance before any reading.</summary>
    public double Chance { get; init; } = 1;
}
