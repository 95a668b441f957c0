using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Tests.Drawing;

namespace Ohmstead.Workshop.Tests.TakeApart;

public sealed class ToolAndTrickTests
{
    [Fact]
    public void A_step_carries_its_tool_and_its_trick_and_may_have_neither()
    {
        var text = DrawnSheets
            .Text("tests/Reference/sample/twin-160.sheet.json")
            .Replace("\"minutesOut\"", "\"tool\": \"hex key\", \"trick\": \"Line it up.\", \"minutesOut\"", StringComparison.Ordinal);
        var steps = TypeSheetFile.Read(text).Required.TakeApart;
        Assert.NotEmpty(steps);
        Assert.All(steps, s => Assert.Equal(("hex key", "Line it up."), (s.Tool, s.Trick)));
        Assert.All(
            DrawnSheets.Sheet("tests/Reference/sample/twin-160.sheet.json").TakeApart,
            s => Assert.Equal(("", ""), (s.Tool, s.Trick))
        );
    }
}
