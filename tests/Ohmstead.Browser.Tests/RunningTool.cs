using System.Diagnostics;
using Ohmstead.Storage;

namespace Ohmstead.Browser.Tests;

/// <summary>The built program, started as its user starts it, on a free port and a folder of its own.</summary>
internal sealed class RunningTool : IAsyncDisposable
{
    private readonly DirectoryInfo folder;
    private Process? process;
    private Task<string> said = Task.FromResult("");

    private RunningTool(DirectoryInfo folder) => this.folder = folder;

    /// <summary>Where the workshop is kept.</summary>
    public string Folder => folder.FullName;

    public Uri Address { get; private set; } = null!;

    /// <summary>The root of the repository.</summary>
    public static string Root { get; } = FindRoot();

    public static string SheetFile(string name) => Path.Combine(Root, "demo", $"{name}.sheet.json");

    /// <param name="more">Further options.</param>
    public static async Task<RunningTool> StartAsync(params string[] more)
    {
        var tool = new RunningTool(Directory.CreateTempSubdirectory("ohmstead-browser-"));
        await tool.BeginAsync(["--port", "0", "--data", tool.Folder, .. more]);
        return tool;
    }

    /// <summary>Starts it on a workshop into which type sheets were brought.</summary>
    public static Task<RunningTool> StartWithTypesAsync(params string[] sheets) => StartFilledAsync(_ => Task.CompletedTask, sheets);

    /// <summary>The same with what else is to be in it.</summary>
    public static async Task<RunningTool> StartFilledAsync(Func<Store, Task> fill, params string[] sheets)
    {
        var tool = new RunningTool(Directory.CreateTempSubdirectory("ohmstead-browser-"));
        await using (var store = await Store.OpenAsync(tool.Folder, TimeProvider.System))
        {
            foreach (var sheet in sheets)
                await store.SaveDocumentAsync(
                    App.Web.Bench.SheetKind,
                    sheet,
                    0,
                    await File.ReadAllTextAsync(SheetFile(sheet)),
                    DateTimeOffset.UnixEpoch,
                    CancellationToken.None
                );
            await fill(store);
        }
        await tool.BeginAsync(["--port", "0", "--data", tool.Folder]);
        return tool;
    }

    public static async Task<RunningTool> StartDemoAsync()
    {
        var tool = new RunningTool(Directory.CreateTempSubdirectory("ohmstead-browser-"));
        await tool.BeginAsync(["demo", "--port", "0"]);
        return tool;
    }

    /// <summary>Ends it as a power cut would.</summary>
    public async Task KillAsync()
    {
        if (process is null)
            return;
        process.Kill(entireProcessTree: true);
        await process.WaitForExitAsync();
        process.Dispose();
        process = null;
    }

    /// <summary>Starts it again on the same folder and port.</summary>
    public Task AgainAsync() =>
        BeginAsync(["--port", Address.Port.ToString(System.Globalization.CultureInfo.InvariantCulture), "--data", Folder]);

    /// <summary>Runs a verb to its end; what it printed.</summary>
    public static async Task<string> RunAsync(params string[] arguments)
    {
        using var verb = Process.Start(Command(arguments))!;
        var (output, error) = (verb.StandardOutput.ReadToEndAsync(), verb.StandardError.ReadToEndAsync());
        await verb.WaitForExitAsync();
        Assert.True(verb.ExitCode == 0, await error);
        return await output;
    }

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        folder.Delete(recursive: true);
        // Stands beside a test that failed: what broke in the tool is said there and not on the page.
        if (await said is { Length: > 0 } log)
            TestContext.Current.TestOutputHelper?.WriteLine($"The tool said: {log}");
    }

    private async Task BeginAsync(string[] arguments)
    {
        var begun = process = Process.Start(Command(arguments))!;
        var error = begun.StandardError.ReadToEndAsync();
        const string before = "Ohmstead is at ";
        while (await begun.StandardOutput.ReadLineAsync() is { } line)
            if (line.StartsWith(before, StringComparison.Ordinal))
            {
                Address = new Uri(line[before.Length..].Trim());
                said = begun.StandardOutput.ReadToEndAsync();
                return;
            }
        Assert.Fail($"the program did not start: {await error}");
    }

    private static ProcessStartInfo Command(string[] arguments) =>
        new("dotnet", [Path.Combine(AppContext.BaseDirectory, "ohmstead.dll"), .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            WorkingDirectory = Path.GetTempPath(),
            // What broke inside is then said to the window too: a test that fails says why.
            Environment = { ["ASPNETCORE_DETAILEDERRORS"] = "true" },
        };

    private static string FindRoot()
    {
        var at = new DirectoryInfo(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Ohmstead.slnx")))
            at = at.Parent;
        return at?.FullName ?? throw new InvalidOperationException("the tests run outside the repository");
    }
}
