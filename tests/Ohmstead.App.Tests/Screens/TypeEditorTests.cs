using Bunit;
using Ohmstead.App.Screens.Types;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Tests.Screens;

public class TypeEditorTests
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    private static string Sheet => File.ReadAllText(Tool.Demo("solo-110.sheet.json"));

    private static async Task<(OpenWorkshop Workshop, IRenderedComponent<OneType> Screen)> OpenAsync()
    {
        var workshop = await OpenWorkshop.OpenAsync();
        await workshop.PutAsync(Bench.SheetKind, "solo-110", Sheet);
        var screen = workshop.Screens.Render<OneType>(p => p.Add(k => k.KindId, "solo-110"));
        screen.WaitForElement("#code", Patience);
        return (workshop, screen);
    }

    [Fact]
    public async Task A_fault_is_told_at_its_line_kept_as_a_draft_and_saved_when_sound()
    {
        var (workshop, screen) = await OpenAsync();
        await using var open = workshop;
        Assert.Contains("No mistakes", screen.Find("#found").TextContent, StringComparison.Ordinal);
        var wrong = Sheet.Replace("\"lossOhms\": 1850", "\"lossOhms\": -5", StringComparison.Ordinal);
        var line = wrong[..wrong.IndexOf("-5", StringComparison.Ordinal)].Count(c => c == '\n') + 1;
        await screen.DoAsync(() => screen.Find("#code").InputAsync(wrong));
        screen.WaitForAssertion(
            () =>
                Assert.Contains(
                    $"Line {line.ToString(System.Globalization.CultureInfo.InvariantCulture)}",
                    screen.Markup,
                    StringComparison.Ordinal
                ),
            Patience
        );
        Assert.True(screen.Find("button.do").HasAttribute("disabled"));
        screen.WaitForAssertion(
            () => Assert.Contains("draft saved", screen.Find(".end[role=status]").TextContent, StringComparison.Ordinal),
            Patience
        );
        Assert.Equal(wrong, await workshop.TextAsync(KindText.DraftKind, "solo-110"));
        Assert.Equal(Sheet, await workshop.TextAsync(Bench.SheetKind, "solo-110"));

        var right = Sheet.Replace("\"lossOhms\": 1850", "\"lossOhms\": 1900", StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#code").InputAsync(right));
        screen.WaitForAssertion(() => Assert.False(screen.Find("button.do").HasAttribute("disabled")), Patience);
        await screen.DoAsync(() => screen.Find("button.do").ClickAsync());
        screen.WaitForAssertion(() => Assert.Contains("saved as version 2", screen.Markup, StringComparison.Ordinal), Patience);
        Assert.Equal(right, await workshop.TextAsync(Bench.SheetKind, "solo-110"));
        Assert.Equal("", await workshop.TextAsync(KindText.DraftKind, "solo-110"));
    }

    [Fact]
    public async Task A_draft_is_there_again_when_the_page_is_opened_anew()
    {
        var (workshop, screen) = await OpenAsync();
        await using var open = workshop;
        await screen.DoAsync(() => screen.Find("#code").InputAsync("{ half"));
        screen.WaitForAssertion(() => Assert.Contains("draft saved", screen.Markup, StringComparison.Ordinal), Patience);
        var again = workshop.Screens.Render<OneType>(p => p.Add(k => k.KindId, "solo-110"));
        Assert.Equal("{ half", again.WaitForElement("#code", Patience).GetAttribute("value"));
    }

    [Fact]
    public async Task The_drawing_follows_the_text_and_stays_while_the_text_is_wrong()
    {
        var (workshop, screen) = await OpenAsync();
        await using var open = workshop;
        screen.WaitForElement("[data-element=pigtail]", Patience);
        await screen.DoAsync(() => screen.Find("#code").InputAsync(Sheet.Replace("\"pigtail\"", "\"braid\"", StringComparison.Ordinal)));
        screen.WaitForElement("[data-element=braid]", Patience);
        await screen.DoAsync(() => screen.Find("#code").InputAsync("{ half"));
        screen.WaitForAssertion(
            () => Assert.Equal("Drawing, from the last text without a mistake", screen.Find("#circuit").TextContent),
            Patience
        );
        Assert.NotEmpty(screen.FindAll("[data-element=braid]"));
    }

    [Fact]
    public async Task What_is_odd_in_a_sound_text_is_said_at_its_line()
    {
        var (workshop, screen) = await OpenAsync();
        await using var open = workshop;
        var odd = Sheet
            .Replace("\"title\": \"14 V post, no load\"", "\"titel\": \"x\", \"title\": \"14 V post, no load\"", StringComparison.Ordinal)
            .Replace("\"volts\": \"mains\", \"seriesLamp\"", "\"volts\": 115, \"seriesLamp\"", StringComparison.Ordinal);
        await screen.DoAsync(() => screen.Find("#code").InputAsync(odd));
        screen.WaitForAssertion(() => Assert.Contains("Look at", screen.Find("#found").TextContent, StringComparison.Ordinal), Patience);
        Assert.Contains(
            "write \"mains\"",
            screen.Markup.Replace("&quot;", "\"", StringComparison.Ordinal),
            StringComparison.OrdinalIgnoreCase
        );
        Assert.False(screen.Find("button.do").HasAttribute("disabled"));
    }

    [Fact]
    public async Task Another_id_in_the_text_is_not_saved_over_this_kind()
    {
        var (workshop, screen) = await OpenAsync();
        await using var open = workshop;
        await screen.DoAsync(() => screen.Find("#code").InputAsync(KindText.Copy(Sheet, "other", "Other")));
        screen.WaitForAssertion(() => Assert.False(screen.Find("button.do").HasAttribute("disabled")), Patience);
        await screen.DoAsync(() => screen.Find("button.do").ClickAsync());
        screen.WaitForAssertion(
            () => Assert.Contains("Copy the type first", screen.Find(".warning").TextContent, StringComparison.Ordinal),
            Patience
        );
        Assert.Equal(Sheet, await workshop.TextAsync(Bench.SheetKind, "solo-110"));
    }
}
