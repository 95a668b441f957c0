using Bunit;
using Ohmstead.App.Screens.Shop;

namespace Ohmstead.App.Tests.Screens;

public class ShopScreenTests
{
    [Fact]
    public async Task A_changed_field_is_saved_at_once()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        var screen = workshop.Screens.Render<ShopSettings>();
        screen.WaitForElement("#f-name");
        await screen.DoAsync(() => screen.Find("#f-name").ChangeAsync("Bench <b>No. 7</b>"));
        screen.WaitForAssertion(() => Assert.Contains("saved ", screen.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal("Bench <b>No. 7</b>", (await workshop.Bench.ShopAsync()).Name);
        await screen.DoAsync(() => screen.Find("#f-rate").ChangeAsync("62,5"));
        screen.WaitForAssertion(() => Assert.Equal("62.5", screen.Find("#f-rate").GetAttribute("value")));
        Assert.Equal(62.5, (await workshop.Bench.ShopAsync()).RatePerHour);
    }

    /// <summary>The id of a part is what steps of a type sheet refer to: a person reads its name.</summary>
    [Fact]
    public void Parts_are_listed_by_their_names_and_limits_of_insulation_in_megohms()
    {
        using var screens = new BunitContext();
        var parts = screens.Render<ShopParts>(p =>
            p.Add(s => s.Shop, Workshop.Shops.Shop.Usual).Add(s => s.Save, _ => Task.FromResult(""))
        );
        foreach (var part in Workshop.Shops.Shop.Usual.Parts.Where(p => p.Id.Contains('-', StringComparison.Ordinal)))
            Assert.DoesNotContain(part.Id, parts.Find("section").TextContent, StringComparison.Ordinal);
        var limits = screens.Render<ShopLimits>(p =>
            p.Add(s => s.Shop, Workshop.Shops.Shop.Usual).Add(s => s.Save, _ => Task.FromResult(""))
        );
        Assert.Equal("2", limits.Find("#f-g-insulation").GetAttribute("value"));
        Assert.Contains("MΩ", limits.Find("label[for=f-g-insulation]").TextContent, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_taken_stays_as_typed_with_words_beside_it()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        var screen = workshop.Screens.Render<ShopSettings>();
        screen.WaitForElement("#f-rate");
        await screen.DoAsync(() => screen.Find("#f-rate").ChangeAsync("a lot"));
        screen.WaitForAssertion(() =>
            Assert.Contains("“a lot” is not a number", screen.Find("#f-rate-wrong").TextContent, StringComparison.Ordinal)
        );
        Assert.Equal("a lot", screen.Find("#f-rate").GetAttribute("value"));
        Assert.Equal(50, (await workshop.Bench.ShopAsync()).RatePerHour);
    }

    [Fact]
    public async Task Two_windows_on_the_shop_lose_nothing_and_the_second_is_told()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        var (first, second) = (workshop.Screens.Render<ShopSettings>(), workshop.Screens.Render<ShopSettings>());
        first.WaitForElement("#f-name");
        await first.DoAsync(() => first.Find("#f-name").ChangeAsync("From the first"));
        first.WaitForAssertion(() => Assert.Contains("saved ", first.Find("[role=status]").TextContent, StringComparison.Ordinal));
        second.WaitForElement("#f-address");
        await second.DoAsync(() => second.Find("#f-address").ChangeAsync("From the second"));
        second.WaitForAssertion(() =>
            Assert.Contains("another window", second.Find("#f-address-wrong").TextContent, StringComparison.Ordinal)
        );
        Assert.Equal("From the first", second.Find("#f-name").GetAttribute("value"));
        await second.DoAsync(() => second.Find("#f-address").ChangeAsync("From the second"));
        second.WaitForAssertion(() => Assert.True(second.Find("#f-address-wrong").HasAttribute("hidden")));
        var shop = await workshop.Bench.ShopAsync();
        Assert.Equal(("From the first", "From the second"), (shop.Name, shop.Address));
    }

    [Fact]
    public async Task A_meter_can_be_told_apart_and_its_leads_entered()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        var screen = workshop.Screens.Render<ShopSettings>(p => p.Add(s => s.Page, "meters"));
        screen.WaitForElement("#f-usual-ohms-l");
        await screen.DoAsync(() => screen.Find("#f-usual-ohms-l").ChangeAsync("0.31"));
        screen.WaitForAssertion(() => Assert.Equal("0.31", screen.Find("#f-usual-ohms-l").GetAttribute("value")));
        Assert.Equal(0.31, (await workshop.Bench.ShopAsync()).Meters[0].Errors["ohms"].LeadOhms);
    }

    /// <summary>No field is on two pages, and none of the old long page is lost: each subject has a page of its own.</summary>
    [Theory]
    [InlineData("", "#f-rate")]
    [InlineData("meters", "#f-usual-ohms-p")]
    [InlineData("loads", "#f-l-r-4")]
    [InlineData("parts", "#f-come-back")]
    [InlineData("limits", "#f-g-insulation")]
    [InlineData("look-over", "#f-i-cord-q")]
    [InlineData("mistakes", "#f-rw-swap")]
    [InlineData("language", "#words")]
    public async Task Each_subject_has_a_page_of_its_own(string page, string field)
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        var screen = workshop.Screens.Render<ShopSettings>(p => p.Add(s => s.Page, page.Length > 0 ? page : null));
        screen.WaitForElement(field);
        Assert.Single(screen.FindAll("section.sheet"));
        Assert.Equal("page", screen.Find($".pages a[href='/shop{(page.Length > 0 ? "/" : "")}{page}']").GetAttribute("aria-current"));
        Assert.Equal(8, screen.FindAll(".pages a").Count);
    }

    [Fact]
    public async Task The_second_language_is_chosen_and_a_words_file_with_a_wrong_line_is_not_taken()
    {
        await using var workshop = await OpenWorkshop.OpenAsync();
        var screen = workshop.Screens.Render<ShopSettings>(p => p.Add(s => s.Page, "language"));
        screen.WaitForElement("input[name=language]");
        await screen.DoAsync(() => screen.FindAll("input[name=language]")[1].ChangeAsync(true));
        screen.WaitForAssertion(() => Assert.Contains("saved ", screen.Find("[role=status]").TextContent, StringComparison.Ordinal));
        Assert.Equal("deutsch", (await workshop.Bench.ShopAsync()).SecondLanguage);
        var file = screen.FindComponent<Microsoft.AspNetCore.Components.Forms.InputFile>();
        file.UploadFiles(InputFileContent.CreateFromText("language = Polski\ncode = pl\nFor {0}. = Dla.", "polski.txt"));
        screen.WaitForAssertion(() =>
            Assert.Contains("line 3: does not keep the marks", screen.Find("[role=alert] li").TextContent, StringComparison.Ordinal)
        );
        Assert.Equal("deutsch", (await workshop.Bench.ShopAsync()).SecondLanguage);
        file.UploadFiles(InputFileContent.CreateFromText("language = Polski\ncode = pl\nFor {0}. = Dla {0}.", "Polski.txt"));
        screen.WaitForAssertion(() => Assert.Contains("Polski.txt is taken in.", screen.Markup, StringComparison.Ordinal));
        Assert.Equal("polski", (await workshop.Bench.ShopAsync()).SecondLanguage);
    }
}
