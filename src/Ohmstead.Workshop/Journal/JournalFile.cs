using System.Collections.Immutable;
using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Journal;

/// <summary>The journal of a unit as a file: what goes out, and what comes in from anywhere and is believed only after a look at every field.</summary>
public static class JournalFile
{
    /// <summary>The mark of the format, in the field <c>ohmstead</c>.</summary>
    public const string Mark = "journal/1";

    private static readonly Dictionary<string, Type> Kinds = typeof(Fact)
        .GetCustomAttributes<JsonDerivedTypeAttribute>()
        .ToDictionary(kind => (string)kind.TypeDiscriminator!, kind => kind.DerivedType, StringComparer.Ordinal);

    /// <summary>Kinds of facts that this version knows.</summary>
    public static IReadOnlyCollection<string> KnownKinds => Kinds.Keys;

    /// <summary>The journal as text, an entry a line.</summary>
    public static string Write(Guid unitId, IReadOnlyList<Entry> journal)
    {
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{{ \"ohmstead\": \"{Mark}\", \"unit\": \"{unitId:D}\", \"entries\": [");
        foreach (var e in journal)
        {
            text.Append(e.Number == journal[0].Number ? "\n" : ",\n");
            var by = JsonSerializer.Serialize(e.By, FactText.Options);
            text.Append(
                CultureInfo.InvariantCulture,
                $"{{\"id\":\"{e.Id:D}\",\"number\":{e.Number},\"at\":\"{e.At.UtcDateTime:O}\",\"by\":{by},{Made(e)}\"fact\":{Json(e.Fact)}}}"
            );
        }
        return text.Append("\n] }\n").ToString();
    }

    /// <summary>Reads a journal from anywhere.</summary>
    /// <returns>The entries in their order, or every problem with its JSON path.</returns>
    public static Parsed<UnitEntries> Read(string text)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        if (root.Word("ohmstead") is var mark && mark.Length > 0 && mark != Mark)
            root.Report("ohmstead", $"is \"{mark}\"", $"\"{Mark}\" is expected");
        var unitId = Id(root, "unit");
        var (entries, ids) = (new List<NewEntry>(), new HashSet<Guid>());
        foreach (var at in root.List("entries", int.MaxValue))
        {
            if (!at.IsObject())
                continue;
            var entry = Entry(at, entries.Count + 1);
            if (!ids.Add(entry.Id) && entry.Id != Guid.Empty)
                at.Report("id", "occurs twice", "every entry has an id of its own");
            entries.Add(entry with { After = entry.After ?? (entries.Count == 0 ? [] : [entries[^1].Id]) });
        }
        if (entries.Count == 0)
            root.Report("entries", "is empty", "a journal has at least one entry");
        else if (problems.Count == 0 && entries[0].Fact is not TakenIn)
            root.Report("entries[0].fact.kind", "is not \"taken-in\"", "a journal begins with taking the unit in");
        return problems.Count == 0 ? new(new UnitEntries(unitId, entries), problems) : new(null, problems);
    }

    /// <summary>Reads one fact from anywhere; a kind of a later version is kept word for word.</summary>
    public static Fact? ReadFact(JsonCursor at)
    {
        if (!at.IsObject())
            return null;
        var kind = at.Word("kind");
        if (kind.Length == 0)
            return null;
        if (!IsKnown(at.Element))
            return new Unread(at.Element.GetRawText());
        foreach (var field in Kinds[kind].GetConstructors().Single(c => c.GetParameters().Length > 0).GetParameters())
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(field.Name!);
            if (!field.HasDefaultValue && !at.Element.TryGetProperty(name, out _))
                at.Report(name, "is missing", $"a \"{kind}\" has it");
        }
        try
        {
            return at.Element.Deserialize<Fact>(StrictJson.Options);
        }
        catch (JsonException wrong)
        {
            var place = wrong.Path is { Length: > 1 } path ? path[2..] : "";
            if (place.Length > 0)
                at.Report(place, "is not of the right type", "docs/formats.md shows what each kind of entry holds");
            else
                at.Report($"does not hold what a \"{kind}\" holds", "docs/formats.md shows what each kind of entry holds");
            return null;
        }
    }

    private static NewEntry Entry(JsonCursor at, int number)
    {
        var id = Id(at, "id");
        if (
            at.Has("number")
            && (
                at.At("number").Element.ValueKind != JsonValueKind.Number
                || !at.At("number").Element.TryGetInt32(out var given)
                || given != number
            )
        )
            at.Report(
                "number",
                "is out of order",
                $"{number.ToString(CultureInfo.InvariantCulture)} is expected: the entries are numbered 1, 2, 3…"
            );
        var when = default(DateTimeOffset);
        if (
            at.Word("at") is { Length: > 0 } text
            && !DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out when)
        )
            at.Report("at", $"\"{text}\" is no time", "a time like \"2026-03-04T12:00:00Z\" is expected");
        var by = at.Has("by") && at.At("by").Element is { ValueKind: JsonValueKind.String } words ? words.GetString()! : "";
        if (!at.Has("by") || at.At("by").Element.ValueKind != JsonValueKind.String)
            at.Report("by", "is missing or no text", "who entered it, in quotes; \"\" when nobody knows");
        var fact = at.Has("fact") ? ReadFact(at.At("fact")) : null;
        if (!at.Has("fact"))
            at.Report("fact", "is missing", "what was entered is required");
        return new NewEntry(id, when, by, fact ?? new Noted("")) { Bench = at.Has("bench") ? at.Word("bench") : "", After = After(at) };
    }

    private static ImmutableArray<Guid>? After(JsonCursor at)
    {
        if (!at.Has("after"))
            return null;
        var ids = ImmutableArray.CreateBuilder<Guid>();
        foreach (var one in at.List("after", int.MaxValue))
            if (Guid.TryParseExact(one.AsWord(), "D", out var id))
                ids.Add(id);
            else
                one.Report("is no id", "ids of entries are expected");
        return ids.ToImmutable();
    }

    /// <summary>Where it was made and after what; nothing where it goes without saying.</summary>
    private static string Made(Entry entry)
    {
        var bench = entry.Bench.Length == 0 ? "" : $"\"bench\":{JsonSerializer.Serialize(entry.Bench, FactText.Options)},";
        return entry.After is { } after ? $"{bench}\"after\":[{string.Join(',', after.Select(id => $"\"{id:D}\""))}]," : bench;
    }

    private static Guid Id(JsonCursor at, string name)
    {
        var text = at.Word(name);
        if (Guid.TryParseExact(text, "D", out var id) && id != Guid.Empty)
            return id;
        if (text.Length > 0)
            at.Report(name, $"\"{text}\" is no id", "32 hexadecimal digits in five groups are expected");
        return Guid.Empty;
    }

    private static bool IsKnown(JsonElement fact) =>
        fact.ValueKind == JsonValueKind.Object
        && fact.TryGetProperty("kind", out var kind)
        && kind.ValueKind == JsonValueKind.String
        && Kinds.ContainsKey(kind.GetString()!)
        && (!fact.TryGetProperty("instead", out var instead) || instead.ValueKind != JsonValueKind.Object || IsKnown(instead));

    private static string Json(Fact fact)
    {
        var text = FactText.Write(fact);
        try
        {
            using var json = JsonDocument.Parse(text);
            return text.ReplaceLineEndings(" ");
        }
        catch (JsonException)
        {
            return JsonSerializer.Serialize(new { kind = "unread", text }, FactText.Options);
        }
    }
}
