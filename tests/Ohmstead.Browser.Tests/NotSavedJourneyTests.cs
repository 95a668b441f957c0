using Microsoft.Data.Sqlite;

namespace Ohmstead.Browser.Tests;

/// <summary>What becomes of what is typed when the tool cannot save it, breaks, or is gone for a while.</summary>
public sealed class NotSavedJourneyTests(OpenBrowser browser)
{
    [Theory]
    [InlineData(Width.Phone)]
    [InlineData(Width.Desk, Traits = ["kind", "long"])]
    public async Task What_was_typed_is_never_lost_without_a_word(Width width)
    {
        await using var tool = await RunningTool.StartAsync();
        await using var window = await Window.OpenAsync(browser, tool.Address, width);
        await window.BringInAsync("solo-110");
        var unit = await window.TakeInAsync("solo-110", "It hums.");
        await window.GoAsync($"{unit}/round");
        var box = window.Page.Locator(".round-line input").First;
        var said = window.Page.Locator(".mishap");
        await RunAsync(tool, "CREATE TRIGGER no_room BEFORE INSERT ON Entries BEGIN SELECT RAISE(ABORT, 'no room'); END");
        await box.FillAsync("OL");
        await box.PressAsync("Enter");
        await Expect(said).ToContainTextAsync("Not saved.");
        await Expect(box).ToHaveValueAsync("OL");
        await window.SeeAsync();
        await RunAsync(tool, "DROP TRIGGER no_room");
        await box.PressAsync("Enter");
        await window.SeesAsync("Saved:");
        await Expect(said).ToHaveCountAsync(0);

        // The tool is gone and comes again; and a screen is ended by an error at the tool's side, as its script is told of one.
        await box.FillAsync("3.7");
        await tool.KillAsync();
        await tool.AgainAsync();
        await BackAsync(window, "3.7");
        await box.FillAsync("4.7");
        await window.Page.EvaluateAsync("document.getElementById('blazor-error-ui').style.display = 'block'");
        await BackAsync(window, "4.7");
        await window.SeeAsync();
    }

    private static async Task BackAsync(Window window, string value)
    {
        await Expect(window.Page.Locator("#typed-back")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await Expect(window.Page.Locator(".round-line input").First).ToHaveValueAsync(value);
        await Expect(window.Page.Locator("#blazor-error-ui")).Not.ToBeVisibleAsync();
    }

    private static async Task RunAsync(RunningTool tool, string command)
    {
        await using var connection = new SqliteConnection($"Data Source={Path.Combine(tool.Folder, "workshop.db")};Pooling=False");
        await connection.OpenAsync();
        await using var run = connection.CreateCommand();
        run.CommandText = command;
        await run.ExecuteNonQueryAsync();
    }
}
