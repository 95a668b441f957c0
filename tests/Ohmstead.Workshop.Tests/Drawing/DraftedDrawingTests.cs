using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Tests.Asking;

namespace Ohmstead.Workshop.Tests.Drawing;

/// <summary>The drawing of a type that was drafted: nobody put its parts in place by hand.</summary>
public sealed class DraftedDrawingTests
{
    private const int Drawn = 24;

    private static readonly string[] Files =
    [
        "tests/Reference/outlines/direct-60.outline.json",
        "tests/Reference/outlines/mixed-200.outline.json",
        "tests/Reference/outlines/twin-160.outline.json",
        "perf/Ohmstead.Perf/Experiments/Drafted/Types/knob-75.outline.json",
        "perf/Ohmstead.Perf/Experiments/Drafted/Types/pair-250.outline.json",
        "perf/Ohmstead.Perf/Experiments/Drafted/Types/shoes-180.outline.json",
        "perf/Ohmstead.Perf/Experiments/Drafted/Types/wire-40.outline.json",
    ];

    public static TheoryData<string> Known() => [.. Files, "single", "twin", "direct", "unlike"];

    private static TypeSheet Sheet(string name) =>
        OutlineFile
            .Read(
                name switch
                {
                    "single" => AnswerOutline.Of(AskedUnits.Single, AskedUnits.Id).Text,
                    "twin" => AnswerOutline.Of(AskedUnits.Twin, AskedUnits.Id).Text,
                    "direct" => AnswerOutline.Of(AskedUnits.Direct, AskedUnits.Id).Text,
                    "unlike" => AnswerOutline.Of(AskedUnits.Unlike, AskedUnits.Id).Text,
                    _ => DrawnSheets.Text(name),
                }
            )
            .Required.Kinds[0]
            .Sheet;

    [Theory]
    [MemberData(nameof(Known))]
    public void Nothing_lies_over_anything_and_the_circuit_is_the_sheets(string name)
    {
        var sheet = Sheet(name);
        var drawing = DrawnSheets.Draw(sheet);
        Assert.Empty(Clearance.Overlaps(drawing));
        Assert.Empty(Trace.Differences(drawing, sheet));
    }

    /// <summary>From fixed seeds, every sort of block in every number.</summary>
    [Fact]
    public void Of_drawn_outlines_none_has_a_label_or_a_wire_over_another()
    {
        var (drafted, wrong) = (0, new List<string>());
        for (var seed = 0; seed < Drawn; seed++)
        {
            if (OutlineFile.Read(DrawnOutlines.Of(seed)) is not { IsSound: true } read)
                continue;
            drafted++;
            var drawing = DrawnSheets.Draw(read.Required.Kinds[0].Sheet);
            wrong.AddRange(Clearance.Overlaps(drawing).Select(o => FormattableString.Invariant($"{seed}: {o}")));
        }
        Assert.Empty(wrong);
        Assert.InRange(drafted, Drawn * 3 / 4, Drawn);
    }
}
