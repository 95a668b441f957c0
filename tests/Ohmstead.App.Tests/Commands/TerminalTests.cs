namespace Ohmstead.App.Tests.Commands;

/// <summary>What a file brought along never steers the terminal.</summary>
public sealed class TerminalTests
{
    /// <summary>The terminal's title, red, back a line, C1's own introducer, and the direction of writing turned.</summary>
    private const string Steering = "\e]0;owned\a\e[31m\u0008\u009b2J\u202egnp";

    private static readonly string Sheet = Tool.File(
        "steering.sheet.json",
        File.ReadAllText(Tool.Demo("solo-110.sheet.json"))
            .Replace("\"title\": \"", "\"title\": \"" + System.Text.Json.JsonEncodedText.Encode(Steering), StringComparison.Ordinal)
    );

    [Theory]
    [InlineData("check")]
    [InlineData("predict")]
    [InlineData("rewire")]
    [InlineData("continuity")]
    [InlineData("predict", "--json")]
    [InlineData("plan", "--reach", "\e[31m")]
    public void Control_characters_of_a_sheet_or_an_argument_are_not_printed(string verb, params string[] more)
    {
        var (_, output, error) = Tool.Run([verb, Sheet, .. more]);
        Assert.NotEqual("", output + error);
        var steering = (output + error).Where(c => (char.IsControl(c) && c is not ('\n' or '\t')) || c == '\u202e');
        Assert.Empty(steering.Select(c => ((int)c).ToString("x4", System.Globalization.CultureInfo.InvariantCulture)));
    }
}
