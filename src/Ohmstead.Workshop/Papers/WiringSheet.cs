using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The wiring sheet: the from–to list as found, planned and left, the circuit, and the pinned photos.</summary>
public static class WiringSheet
{
    /// <summary>Its name in <see cref="PaperMade"/> and in addresses.</summary>
    public const string Id = "wiring-sheet";

    /// <summary>The sheet of a unit.</summary>
    public static Paper Make(JudgedUnit judged) => new("Wiring sheet", judged.Unit.Card.Tag, Advice.Foot, [.. Blocks(judged)]);

    private static IEnumerable<Block> Blocks(JudgedUnit judged)
    {
        yield return PaperParts.Letterhead(judged, [new("Tag", judged.Unit.Card.Tag), new("Printed", PaperParts.Day(judged.At))]);
        foreach (var block in PaperParts.Warnings(judged))
            yield return block;
        yield return new Prose(Cautions.CautionTable.LocalCodes, Size.Small);
        if (judged.Sheet is not { } sheet)
        {
            yield return new Prose("Its type is not known. There is no wiring to print.");
            yield break;
        }
        var (found, left) = (WiringRecord.Of(judged.Unit, sheet, WiringState.Found), WiringRecord.Of(judged.Unit, sheet, WiringState.Left));
        yield return new Heading("From, to", 1);
        yield return new Table(
            [new("Wire end", 4), new("Color", 2), new("As found", 3), new("As planned", 3), new("As left", 3)],
            [
                .. EndCompared
                    .All(found, left, sheet)
                    .Select(e => new Row(
                        [
                            PartNames.End(sheet, e.End),
                            Colour(e.End, found, left),
                            PartNames.Terminal(sheet, e.Found),
                            PartNames.Terminal(sheet, e.Planned),
                            PartNames.Terminal(sheet, e.Left),
                        ],
                        e.IsWrong ? Weight.Stop : Weight.None,
                        e.IsWrong ? "not as planned" : ""
                    )),
            ]
        );
        foreach (var record in (WiringRecord[])[found, left])
        {
            var name = record.As == WiringState.Found ? "As found" : "As left";
            if (record.Joints.IsEmpty)
                continue;
            if (record.Incomplete(sheet) is { IsEmpty: false } missing)
            {
                yield return new Heading($"{name}: not complete", 2);
                yield return new Points(missing);
            }
            yield return new Heading($"{name}, photos", 1);
            yield return new Photos([
                .. record
                    .Joints.Where(j => j.Photo.Length > 0)
                    .GroupBy(j => j.Photo)
                    .Select(g => new Photo(
                        g.Key,
                        string.Join("; ", g.Select((j, n) => $"{ValueText.Plain(n + 1)}: {PartNames.Terminal(sheet, j.Terminal)}")),
                        [.. g.Select(j => (j.X, j.Y))]
                    )),
            ]);
        }
        if (!UntypedIds.IsOne(sheet))
            yield return new Circuit("The circuit, as planned", CircuitDrawing.Draw(CircuitLayout.Of(sheet), Overlay.None));
    }

    private static string Colour(string end, WiringRecord found, WiringRecord left) =>
        left.ColourOf(end) is { Length: > 0 } now ? now : found.ColourOf(end);
}
