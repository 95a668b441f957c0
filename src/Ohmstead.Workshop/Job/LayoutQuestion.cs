using System.Text.Json;
using Ohmstead.Electrical.Reckoning;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Workshop.Job;

/// <summary>A load budget as a question file, so that the command line can repeat it.</summary>
public static class LayoutQuestion
{
    private static readonly JsonSerializerOptions Indented = new(FactText.Options) { WriteIndented = true };

    /// <summary>The text of the file.</summary>
    public static string Write(LayoutBudget budget)
    {
        var asked = budget.Question;
        return JsonSerializer.Serialize(
            new Dictionary<string, object>
            {
                ["ohmstead"] = QuestionFile.Mark,
                ["question"] = "load-budget",
                ["unit"] = new { asked.UsableAmps },
                ["posts"] = asked.Posts.Select(p =>
                    p.Wire is { } wire
                        ? (object)
                            new
                            {
                                p.Id,
                                p.Volts,
                                p.SourceOhms,
                                p.MostAmps,
                                wire,
                            }
                        : new
                        {
                            p.Id,
                            p.Volts,
                            p.SourceOhms,
                            p.MostAmps,
                        }
                ),
                ["consumers"] = asked.Consumers.Select(c => new
                {
                    c.What,
                    c.Count,
                    c.Post,
                }),
                ["wanted"] = asked.Wanted.Select(w => new { w.What, w.Post }),
            },
            Indented
        );
    }
}
