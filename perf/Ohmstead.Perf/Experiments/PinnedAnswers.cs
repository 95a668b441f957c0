using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Diagnosis.Observed;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments;

/// <summary>
/// Remakes the answers that a test holds every diagnosis to: those to the sample cases, and to the first thirty units of each sheet
/// that the simulator drew by a fixed seed.
/// </summary>
internal static class PinnedAnswers
{
    public const string File = "tests/Ohmstead.Electrical.Tests/Diagnosis/PinnedAnswers.json";
    private const int DrawnOfEach = 30;

    /// <summary>Ten digits after the point: a ten-thousandth of what the test allows.</summary>
    private const int Digits = 10;

    private static readonly (string Sheet, string Folder, int Most)[] Sources =
    [
        ("tests/Reference/sample/twin-160.sheet.json", "tests/Reference/sample/cases", int.MaxValue),
        ("tests/Reference/units/twin-160.sheet.json", "tests/Reference/units/twin-160", DrawnOfEach),
        ("tests/Reference/units/solo-110.sheet.json", "tests/Reference/units/solo-110", DrawnOfEach),
    ];

    public static int Remake(string root)
    {
        var lines = new List<string>();
        foreach (var (sheetFile, folder, most) in Sources)
        {
            var sheet = TypeSheetFile.Read(System.IO.File.ReadAllText(Path.Combine(root, sheetFile))).Required;
            var library = new ReadingLibrary(new UnitModel(sheet));
            var names = Directory
                .GetFiles(Path.Combine(root, folder), "*.readings.json")
                .Select(f => Path.GetFileName(f))
                .Order(StringComparer.Ordinal)
                .Take(most);
            foreach (var name in names)
                lines.Add(Answer(library, root, sheetFile, $"{folder}/{name}"));
        }
        // One answer a line, so that a change shows which units it moves.
        var text = new StringBuilder("{ \"answers\": [\n").AppendJoin(",\n", lines).Append("\n] }\n");
        System.IO.File.WriteAllText(Path.Combine(root, File), text.ToString());
        return 0;
    }

    private static string Answer(ReadingLibrary library, string root, string sheet, string readings)
    {
        var taken = ReadingsFile.Read(System.IO.File.ReadAllText(Path.Combine(root, readings)), library.Model.Sheet).Required;
        var result = Diagnoser.Run(library, taken, new DiagnosisOptions());
        var next = result.Next.FirstOrDefault(n => n.BlockedBy.IsEmpty);
        return new JsonObject
        {
            ["sheet"] = sheet,
            ["readings"] = readings,
            ["sound"] = Math.Round(result.SoundProbability, Digits),
            ["next"] = next?.Spec.Id,
            ["bits"] = next is null ? null : Math.Round(next.Bits, Digits),
            ["faults"] = new JsonObject(
                result.Faults.Select(f => KeyValuePair.Create(f.Mode.Name, (JsonNode?)Math.Round(f.Probability, Digits)))
            ),
        }.ToJsonString(new JsonSerializerOptions { WriteIndented = false });
    }
}
