using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Storage.Tests;

/// <summary>The schema in docs/ and the reader take the same journals and refuse the same ones by form.</summary>
public sealed class JournalSchemaTests
{
    private static readonly Draft Made = new();
    private static readonly JsonSchema Schema = JsonSchema.FromText(
        File.ReadAllText(Path.Combine(Sheets.Root, "docs/schemas/journal.schema.json"))
    );

    public static TheoryData<string> Facts() => [.. EveryKind.Facts(Made).Select(FactText.Write)];

    [Fact]
    public void Every_kind_is_tried_here() =>
        Assert.Empty(JournalFile.KnownKinds.Except(EveryKind.Facts(Made).Select(f => (string?)JsonNode.Parse(FactText.Write(f))!["kind"])));

    [Theory]
    [MemberData(nameof(Facts))]
    public void A_journal_that_is_written_fits_and_is_read_back(string fact)
    {
        var text = Journal(fact);
        Assert.True(Fits(text), text);
        var read = JournalFile.Read(text);
        Assert.Empty(read.Problems);
        Assert.Equal(fact, FactText.Write(read.Value!.Entries[1].Fact));
    }

    [Theory]
    [MemberData(nameof(Facts))]
    public void Each_field_is_needed_and_of_its_type(string fact)
    {
        var sound = JsonNode.Parse(fact)!.AsObject();
        if (!JournalFile.KnownKinds.Contains((string)sound["kind"]!))
            return;
        foreach (var name in sound.Select(f => f.Key).Where(n => n != "kind"))
        {
            var without = sound.DeepClone().AsObject();
            without.Remove(name);
            // Journals of older versions lack it, and are read.
            if (name is "keeps" or "from" or "also")
                Assert.Empty(JournalFile.Read(Journal(without.ToJsonString())).Problems);
            else
                Refused(Journal(without.ToJsonString()), $"$.entries[1].fact.{name}");
            // A part is any JSON: the sheet's own reader looks at it.
            if (name == "part")
                continue;
            var other = sound.DeepClone().AsObject();
            other[name] = new JsonArray(1);
            Refused(Journal(other.ToJsonString()), "$.entries[1].fact");
        }
    }

    private static void Refused(string text, string place)
    {
        Assert.False(Fits(text), text);
        Assert.Contains(JournalFile.Read(text).Problems, p => p.Path.StartsWith(place, StringComparison.Ordinal));
    }

    private static string Journal(string fact)
    {
        var unit = Made.Id();
        Entry Line(int number, Fact f) => new(Made.Id(), unit, number, Draft.Noon, "bench", f);
        return JournalFile.Write(unit, [Line(1, new TakenIn("12", "", "", "")), Line(2, new Unread(fact))]);
    }

    private static bool Fits(string text)
    {
        using var json = JsonDocument.Parse(text);
        return Schema.Evaluate(json.RootElement).IsValid;
    }
}
