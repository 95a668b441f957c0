using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Benchmarks;

/// <summary>The question <c>now-or-later</c> at its largest: eight parts on sixty steps, on the trees that the plans are measured on.</summary>
internal static class RenewalTrees
{
    public const int Steps = 60;
    public const int Parts = 8;

    /// <summary>Writes a sheet and its question into a folder, loose and dense.</summary>
    public static IEnumerable<(string Kind, string Sheet, string Question)> Write(string folder)
    {
        foreach (var (kind, near, groups) in new[] { ("loose", 30, 2), ("dense", 40, 3) })
        {
            var (sheet, question) = (Path.Combine(folder, $"{kind}.sheet.json"), Path.Combine(folder, $"{kind}.question.json"));
            var tree = PlanningFigures.Tree(Steps, near, groups, kind == "dense", seed: 1);
            File.WriteAllText(sheet, SheetOf(tree));
            File.WriteAllText(question, QuestionOf(tree));
            yield return (kind, sheet, question);
        }
    }

    /// <summary>The sample sheet with other steps.</summary>
    private static string SheetOf(ImmutableArray<TakeApartStep> tree)
    {
        var sheet = JsonNode.Parse(File.ReadAllText(RepositoryRoot.SamplePath))!.AsObject();
        foreach (var reading in sheet["readings"]!.AsArray())
            reading!.AsObject().Remove("access");
        sheet["takeApart"] = JsonSerializer.SerializeToNode(
            tree.Select(s => new
            {
                id = s.Id,
                title = s.Title,
                after = s.After,
                afterAny = s.AfterAny,
                minutesOut = s.MinutesOut,
                minutesIn = s.MinutesIn,
                breakPercent = s.BreakPercent,
                price = s.Price,
            })
        );
        return sheet.ToJsonString();
    }

    private static string QuestionOf(ImmutableArray<TakeApartStep> tree) =>
        JsonSerializer.Serialize(
            new
            {
                ohmstead = "question/1",
                question = "now-or-later",
                parts = tree.TakeLast(Parts)
                    .Select(s => new
                    {
                        step = s.Id,
                        price = 5.1,
                        workMinutes = 6,
                        failPercent = 40,
                    }),
            }
        );
}
