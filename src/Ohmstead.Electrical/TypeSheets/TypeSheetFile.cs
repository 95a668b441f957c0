using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Type sheets as text: reading with every problem found at once, and writing back without loss.</summary>
public static class TypeSheetFile
{
    /// <summary>The mark of the format, in the field <c>ohmstead</c>.</summary>
    public const string Mark = "type-sheet/1";

    private const string SharedFaults = "sharedFaults";
    private const double MostWatts = 1e5;

    /// <summary>How JSON is written: indented, with real letters.</summary>
    public static JsonSerializerOptions Indented { get; } =
        new() { WriteIndented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>Reads and checks a sheet.</summary>
    /// <returns>The sheet, or all its problems, each with its JSON path.</returns>
    public static Parsed<TypeSheet> Read(string text)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        CheckMark(root, Mark);
        var sheet = Build(root);
        CheckTogether(root, sheet, problems);
        if (problems.Count > 0)
            return new(null, problems);
        return new(sheet with { AsRead = new(root.Element) }, problems);
    }

    /// <summary>The paths of a sheet's fields that this program does not read, in the order of the text; a sound sheet only.</summary>
    internal static IReadOnlyList<string> NotRead(TypeSheet sheet)
    {
        var asked = new HashSet<string>(StringComparer.Ordinal);
        if (!JsonCursor.TryOpen(JsonOf(sheet).ToJsonString(), [], out var root, asked))
            return [];
        CheckMark(root, Mark);
        Build(root);
        return [.. FieldRemarks.Fields(root.Element, "$").Where(f => !asked.Contains(f))];
    }

    /// <summary>The sheet as text, with the fields this program does not know.</summary>
    public static string Write(TypeSheet sheet) => JsonOf(sheet).ToJsonString(Indented) + "\n";

    /// <summary>
    /// The same as JSON, to be changed or put into other JSON: the circuit as the records have it, all else as it was read.
    /// </summary>
    public static JsonObject JsonOf(TypeSheet sheet)
    {
        var json = sheet.AsRead.Copy();
        json["elements"] = new JsonArray([.. sheet.Elements.Select(ElementWriter.Of)]);
        if (!sheet.SharedFaults.IsEmpty || json[SharedFaults] is JsonArray { Count: > 0 })
            json[SharedFaults] = new JsonArray([.. sheet.SharedFaults.Select(ElementWriter.Of)]);
        return json;
    }

    /// <summary>Reports when the field <c>ohmstead</c> is not <paramref name="mark"/>.</summary>
    public static void CheckMark(JsonCursor root, string mark)
    {
        if (root.Word("ohmstead", "") != mark)
            root.Report("ohmstead", "is not the mark of this kind of file", $"\"{mark}\" is expected");
    }

    /// <summary>
    /// Checks the parts against each other too when single values are wrong, unless an item could not be read at all: then what
    /// names it would be blamed. Names that could not be read are not complained of twice.
    /// </summary>
    private static void CheckTogether(JsonCursor root, TypeSheet sheet, List<Problem> problems)
    {
        int Count(string list) =>
            root.Has(list) && root.At(list).Element.ValueKind == JsonValueKind.Array ? root.At(list).Element.GetArrayLength() : 0;
        var isWhole =
            Count("cores") == sheet.Cores.Length
            && Count("controls") == sheet.Controls.Length
            && Count("elements") == sheet.Elements.Length
            && Count(SharedFaults) == sheet.SharedFaults.Length
            && Count("readings") == sheet.Readings.Length
            && Count("observations") == sheet.Observations.Length
            && Count("takeApart") == sheet.TakeApart.Length;
        if (!isWhole)
            return;
        var before = problems.Count;
        SheetChecks.Run(root, sheet);
        if (before > 0)
            problems.RemoveAll(p =>
                problems.IndexOf(p) >= before
                && (p.Wrong.Contains("\"\"", StringComparison.Ordinal) || problems.FindIndex(o => o.Path == p.Path) < before)
            );
    }

    private static TypeSheet Build(JsonCursor root)
    {
        var (volts, hertz) = (120.0, 60.0);
        if (!root.Has("supply"))
            root.Report("supply", "is missing", "{ \"volts\": 120, \"hertz\": 60 } is required");
        else if (root.At("supply").IsObject())
            (volts, hertz) = (root.At("supply").Number("volts", 1, 1000), root.At("supply").Number("hertz", 10, 1000));
        var elements = root.RequiredList("elements", 2000);
        var shared = root.List(SharedFaults, 200);
        return new TypeSheet(
            root.Word("id"),
            root.Word("title", ""),
            volts,
            hertz,
            Some(root.List("cores", 20).Select(ElementReader.ReadCore)),
            Some(root.List("controls", 200).Select(ReadControl)),
            Some(elements.Select(e => ElementReader.Read(e))),
            [.. root.List("near", 500).Select(g => g.AsList().Select(t => t.AsWord()).ToImmutableArray())],
            Some(root.RequiredList("readings", 2000).Select(r => ReadingReader.Read(r, volts))),
            Some(root.List("observations", 500).Select(ReadObservation)),
            Some(root.List("takeApart", 5000).Select(ReadStep))
        )
        {
            InputWatts = WattsOf(root, "inputWatts"),
            UsableWatts = WattsOf(root, "usableWatts"),
            DraftedFrom = MarksOf(root),
            Titles = TitleReader.OfSheet(root, [.. elements, .. shared]),
            SharedFaults = Some(shared.Select(SharedFault.Read)),
        };
    }

    /// <summary>Watts of the rating. One that is no number of watts counts as not given.</summary>
    private static double WattsOf(JsonCursor root, string name) =>
        root.Has("rating")
        && root.At("rating") is var rating
        && rating.Has(name)
        && rating.At(name).Element is { ValueKind: JsonValueKind.Number } number
        && number.TryGetDouble(out var watts)
        && watts is > 0 and < MostWatts
            ? watts
            : 0;

    private static ImmutableArray<string> MarksOf(JsonCursor root) =>
        root.Has("draftedFrom") && root.At("draftedFrom").Element is { ValueKind: JsonValueKind.Array } marks
            ? [.. marks.EnumerateArray().Where(m => m.ValueKind == JsonValueKind.String).Select(m => m.GetString()!)]
            : [];

    private static ImmutableArray<T> Some<T>(IEnumerable<T?> items)
        where T : class => [.. items.OfType<T>()];

    private static Control? ReadControl(JsonCursor at)
    {
        if (!at.IsObject())
            return null;
        var (id, kind) = (at.Word("id"), at.Word("kind"));
        if (kind == "throttle")
            return new Control(id, true, [], "");
        if (kind != "selector")
        {
            if (kind.Length > 0)
                at.Report("kind", $"\"{kind}\" is no kind of control", "throttle or selector is expected");
            return null;
        }
        var positions = at.Words("positions");
        if (positions.Length < 2)
            at.Report("positions", "names fewer than two", "a selector has two or more positions");
        if (positions.Distinct(StringComparer.Ordinal).Count() < positions.Length)
            at.Report("positions", "names one twice", "the names must differ");
        var rest = at.Word("rest", positions.FirstOrDefault() ?? "");
        if (positions.Length > 0 && !positions.Contains(rest))
            at.Report("rest", $"\"{rest}\" is none of its positions", "one of " + string.Join(", ", positions));
        return new Control(id, false, positions, rest);
    }

    private static Observation? ReadObservation(JsonCursor at) =>
        !at.IsObject()
            ? null
            : new Observation(
                at.Word("id"),
                at.Word("title", ""),
                [.. at.Fields("given").Select(f => (f.Name, f.At.AsNumber(0, 1)))],
                at.Number("otherwise", 0.02, 0, 1)
            );

    private static TakeApartStep? ReadStep(JsonCursor at) =>
        !at.IsObject()
            ? null
            : new TakeApartStep(
                at.Word("id"),
                at.Word("title", ""),
                at.Words("after"),
                [.. at.List("afterAny", 100).Select(g => g.AsList().Select(s => s.AsWord()).ToImmutableArray())],
                at.Number("minutesOut", 0, 0, 1e5),
                at.Number("minutesIn", 0, 0, 1e5),
                at.Number("breakPercent", 0, 0, 100),
                at.Number("price", 0, 0, 1e9),
                at.Words("lifts"),
                at.Word("part", ""),
                (int)at.Number("cup", 0, 0, 999)
            )
            {
                Tool = at.Word("tool", ""),
                Trick = at.Word("trick", ""),
            };
}
