using System.Text.Json.Nodes;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;

namespace Ohmstead.App.Commands;

/// <summary>A diagnosis as one JSON object.</summary>
internal static class DiagnosisJson
{
    public static JsonObject Of(TypeSheet sheet, UnitReadings taken, DiagnosisResult r, int mostSets) =>
        new()
        {
            ["sheet"] = sheet.Id,
            ["soundProbability"] = r.SoundProbability,
            ["faults"] = new JsonArray([
                .. r.Faults.Select(f => new JsonObject
                {
                    ["element"] = f.Mode.Element,
                    ["mode"] = f.Mode.Mode,
                    ["probability"] = f.Probability,
                    ["size"] = Output.Optional(f.Size),
                    ["low"] = Output.Optional(f.Low),
                    ["high"] = Output.Optional(f.High),
                }),
            ]),
            ["hypotheses"] = new JsonArray([
                .. r
                    .Hypotheses.Take(mostSets)
                    .Select(h => new JsonObject
                    {
                        ["faults"] = new JsonArray([
                            .. h.Faults.Select(m => new JsonObject { ["element"] = m.Element, ["mode"] = m.Mode }),
                        ]),
                        ["probability"] = h.Probability,
                    }),
            ]),
            ["alike"] = new JsonArray([.. r.Alike.Select(g => Output.Words(g.Select(m => m.Name)))]),
            ["readings"] = new JsonArray([
                .. taken
                    .Readings.Where(t => t.IsTaken)
                    .Zip(
                        r.Readings,
                        (t, x) =>
                            new JsonObject
                            {
                                ["id"] = x.Spec.Id,
                                ["measured"] = Measured(t),
                                ["expected"] = x.Expected is { } expected ? Output.Value(expected) : null,
                                ["deviation"] = Output.Optional(x.Deviation),
                            }
                    ),
            ]),
            ["unexplained"] = Output.Words(r.Unexplained),
            ["next"] = new JsonArray([
                .. NextInOrder
                    .Of(sheet, taken, r)
                    .Select(n => new JsonObject
                    {
                        ["id"] = n.Spec.Id,
                        ["bits"] = n.Bits,
                        ["minutes"] = n.Minutes,
                        ["blockedBy"] = Output.Words(n.BlockedBy),
                    }),
            ]),
            ["isExplained"] = r.IsExplained,
            ["slips"] = new JsonArray([
                .. r.Slips.Select(s => new JsonObject
                {
                    ["id"] = s.Id,
                    ["kind"] = NameOf(s.Kind),
                    ["with"] = s.With,
                    ["meant"] = Output.Optional(s.Meant),
                    ["probability"] = s.Probability,
                }),
            ]),
            ["doubts"] = new JsonArray([
                .. r.Doubts.Select(d => new JsonObject
                {
                    ["about"] = d.About.ToString().ToLowerInvariant(),
                    ["probability"] = d.Probability,
                    ["value"] = d.Value,
                    ["unit"] = UnitOf(d.About),
                    ["readings"] = Output.Words(d.Readings),
                    ["parameters"] = Output.Words(d.Parameters),
                }),
            ]),
            ["waived"] = new JsonArray([
                .. taken
                    .Readings.Where(t => t.WaivedBy.Length > 0)
                    .Select(t => new JsonObject
                    {
                        ["id"] = t.Spec.Id,
                        ["by"] = t.WaivedBy,
                        ["why"] = t.Why,
                        ["instead"] = t.Instead,
                    }),
            ]),
            ["search"] = new JsonObject
            {
                ["stopped"] = r.Effort.Stop.ToString().ToLowerInvariant(),
                ["finished"] = r.Effort.IsFinished,
                ["setsTried"] = r.Effort.SetsTried,
                ["setsExpanded"] = r.Effort.SetsExpanded,
            },
        };

    private static string NameOf(SlipKind kind) =>
        kind switch
        {
            SlipKind.TimesTen => "times-ten",
            SlipKind.TimesThousand => "times-thousand",
            _ => kind.ToString().ToLowerInvariant(),
        };

    /// <summary>The unit of a doubt's figure; of the meter and the type sheet it is how many of their stated limits or deviations.</summary>
    private static string UnitOf(DoubtAbout about) =>
        about switch
        {
            DoubtAbout.Line => "volt",
            DoubtAbout.Leads => "ohm",
            DoubtAbout.Meter => "limits",
            DoubtAbout.Unit => "deviations",
            DoubtAbout.Internal => "watt",
            _ => "nat",
        };

    /// <summary>As it is written in a readings file.</summary>
    private static JsonNode Measured(TakenReading t) =>
        t.Outcome switch
        {
            Outcome.OverRange => "OL",
            Outcome.Jumps => new JsonObject { ["jumps"] = new JsonArray([.. t.JumpValues.Select(Output.Value)]) },
            _ => JsonValue.Create(t.Value),
        };
}
