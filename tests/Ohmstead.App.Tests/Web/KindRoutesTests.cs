using System.Net;
using Ohmstead.App.Components;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.App.Tests.Web;

/// <summary>What dates a type goes out as a file that another bench takes in.</summary>
public sealed class KindRoutesTests
{
    private static CancellationToken Stop => Xunit.TestContext.Current.CancellationToken;

    [Fact]
    public async Task Years_and_details_go_out_with_the_type_that_they_are_of_and_come_in_again()
    {
        await using var site = await RunningSite.OnPortAsync();
        var address = new Uri("/kinds/twin-175/dating.json", UriKind.Relative);
        using (var none = await site.Client.GetAsync(address, Stop))
            Assert.Equal(HttpStatusCode.NotFound, none.StatusCode);
        var dates = new KindDates(1946, 1955, [new("cord", "Cord", "", 60, "", [new("cloth", "cloth", null, 1950, 1)])]);
        await site.Bench.SaveDocumentAsync(KindDates.DocumentKind, "twin-175", 0, KindDates.Write(dates));
        using var answer = await site.Client.GetAsync(address, Stop);
        Assert.Equal("twin-175.dating.json", answer.Content.Headers.ContentDisposition!.FileName);
        var file = await answer.Content.ReadAsStringAsync(Stop);
        Assert.Equal(KindDates.Write(dates with { Type = "twin-175" }), file);
        // What this version cannot read goes out as it is kept.
        await site.Bench.SaveDocumentAsync(KindDates.DocumentKind, "solo-110", 0, "{ \"ohmstead\": \"dating/2\" }");
        Assert.Equal(
            "{ \"ohmstead\": \"dating/2\" }",
            await site.Client.GetStringAsync(new Uri("/kinds/solo-110/dating.json", UriKind.Relative), Stop)
        );
        // What is here already stays as it is.
        Assert.Equal("twin-175", (await BroughtIn.KeepAsync(site.Bench, "x.json", file)).Id);
        Assert.Equal(KindDates.Write(dates), (await site.Bench.Store.ReadDocumentAsync(KindDates.DocumentKind, "twin-175", Stop))!.Text);
    }
}
