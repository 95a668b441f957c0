namespace Ohmstead.App.Tests.Commands;

/// <summary>Arguments that cannot be meant get exit status 2, nothing on standard output, and help on what could be.</summary>
public sealed class ArgumentTests
{
    [Theory]
    [InlineData("--fault", "roller-left:rusty", "worn, open")]
    [InlineData("--fault", "roller-lefft:worn", "perhaps roller-left")]
    [InlineData("--fault", "roller-left:worn=much", "is no size")]
    [InlineData("--fault", "roller-left:worn=NaN", "is no size")]
    [InlineData("--fault", "roller-left:worn=-1", "is no size")]
    [InlineData("--fault", "roller-left:worn=1e400", "is no size")]
    [InlineData("--fault", "roller-left:worn=0", "above 0")]
    [InlineData("--fault", "roller-left:worn=1,5", "is no size")]
    [InlineData("--fault", "cord-1:open=3", "leave the value out")]
    [InlineData("--fault", "main:shorted-turns=2.5", "whole turns")]
    [InlineData("--fault", "main:shorted-turns=60", "fewer than 60")]
    [InlineData("--fault", "main:open=61", "from 0 to 60")]
    [InlineData("--fault", "a.to~b.to:swap", "names no two ends")]
    [InlineData("--fault", "", "no part")]
    [InlineData("--readings", "left-lod", "left-load")]
    [InlineData("--readings", ",", "names nothing")]
    [InlineData("--nonsense", "1", "--nonsense")]
    public void Of_predict(string option, string value, string help) => Refused(help, "predict", Tool.Sample, option, value);

    [Theory]
    [InlineData("--most", "-1", "from 0 up")]
    [InlineData("--most", "some", "some")]
    [InlineData("--seconds", "0", "above 0")]
    [InlineData("--seconds", "NaN", "above 0")]
    [InlineData("--seconds", "soon", "soon")]
    public void Of_diagnose(string option, string value, string help) =>
        Refused(help, "diagnose", Tool.Sample, Tool.Case("010"), option, value);

    [Fact]
    public void An_element_is_in_one_fault_mode_at_a_time() =>
        Refused("give each part one fault", "predict", Tool.Sample, "--fault", "roller-left:worn", "--fault", "roller-left:open");

    [Fact]
    public void A_verb_that_is_none_or_that_lacks_its_file()
    {
        Refused("predict", "predct", Tool.Sample);
        Refused("SHEET", "predict");
        Refused("READINGS", "diagnose", Tool.Sample);
        Refused("READINGS", "fit", Tool.Sample);
        Refused("bash", "completion", "abacus");
        Refused("must be 0 to 65535", "--port", "66000");
    }

    private static void Refused(string help, params string[] arguments)
    {
        var (code, output, error) = Tool.Run(arguments);
        Assert.Equal(2, code);
        Assert.Equal("", output);
        Assert.Contains(help, error, StringComparison.Ordinal);
        Refusal.NoTrace(error);
    }
}
