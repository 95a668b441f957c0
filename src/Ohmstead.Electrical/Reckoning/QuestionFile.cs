using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Reckoning;

/// <summary>Question files: <c>docs/formats.md</c>, section "Question files".</summary>
public static class QuestionFile
{
    /// <summary>The mark of the format.</summary>
    public const string Mark = "question/1";

    private const int MostRemarks = 20;

    private static readonly string[] ForPeople = ["$schema", "notes"];

    /// <summary>Reads a question with every problem found at once.</summary>
    /// <param name="text">The file.</param>
    /// <param name="sheet">The type sheet given with it, changed as the unit file says; null where none is given.</param>
    public static QuestionRead Read(string text, TypeSheet? sheet)
    {
        var (problems, asked) = (new List<Problem>(), new HashSet<string>(StringComparer.Ordinal));
        if (!JsonCursor.TryOpen(NotFinite.Replaced(text), problems, out var root, asked))
            return new("", null, problems, []);
        problems.AddRange(NotFinite.Places(root.Element, "$"));
        TypeSheetFile.CheckMark(root, Mark);
        var fields = new QuestionFields(root, sheet);
        var word = fields.OneOf("question", [.. QuestionTable.Readers.Keys]);
        if (problems.Any(p => p.Path == "$.question"))
            return new("", null, problems, []);
        var question = QuestionTable.Readers[word](fields);
        if (problems.Count == 0)
            return new(word, question, [], Remarks(root, asked));
        // Two checks may stumble over one value; the first says what is wrong with it.
        return new(word, null, [.. problems.DistinctBy(p => p.Path)], []);
    }

    private static ImmutableArray<Problem> Remarks(JsonCursor root, HashSet<string> asked)
    {
        var unknown = FieldRemarks
            .Fields(root.Element, "$")
            .Where(f => !asked.Contains(f) && !ForPeople.Contains(f[(f.LastIndexOf('.') + 1)..], StringComparer.Ordinal))
            .ToList();
        // Below a field that is not known nothing is.
        unknown.RemoveAll(f =>
            unknown.Any(u => f.StartsWith(u + ".", StringComparison.Ordinal) || f.StartsWith(u + "[", StringComparison.Ordinal))
        );
        var shown = unknown
            .Take(MostRemarks)
            .Select(f => new Problem(f, "is a field that this question does not know", "it is left out of the reckoning"));
        return unknown.Count <= MostRemarks
            ? [.. shown]
            :
            [
                .. shown,
                new Problem(
                    "$",
                    $"has {(unknown.Count - MostRemarks).ToString(CultureInfo.InvariantCulture)} more fields that this question does not know",
                    "they are left out of the reckoning"
                ),
            ];
    }
}

/// <summary>What reading a question file gives.</summary>
/// <param name="Word">Which question it is; empty where that is not known.</param>
/// <param name="Question">The question, or null with problems.</param>
/// <param name="Problems">Every problem; then nothing is answered.</param>
/// <param name="Remarks">Fields that nothing comes of.</param>
public sealed record QuestionRead(string Word, Question? Question, IReadOnlyList<Problem> Problems, IReadOnlyList<Problem> Remarks);
