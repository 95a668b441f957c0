using System.Diagnostics;

namespace Ohmstead.App.Tests;

/// <summary>The script at the root builds what is stale, then hands over. Here a stand-in for <c>dotnet</c> writes down what it is asked.</summary>
public sealed class ScriptTests : IDisposable
{
    /// <summary>Makes the program that it is asked to publish, in the folder behind <c>-o</c>; runs it by saying from where and with what.</summary>
    private const string StandIn = """
        #!/usr/bin/env bash
        if [ "$1" != publish ]; then echo "ran in $PWD: ${*:2}"; exit; fi
        echo build >>"$BUILDS"
        if [ -n "${BROKEN:-}" ]; then echo "error: a missing semicolon"; exit 1; fi
        while [ "$1" != -o ]; do shift; done
        mkdir -p "$2" && touch "$2/ohmstead.dll"
        """;

    private readonly string root = Directory.CreateTempSubdirectory("ohmstead-script-").FullName;

    public ScriptTests()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows(), "the script needs bash; README.md gives the line for Windows");
        foreach (var folder in (string[])["src", "demo", "bin", "away"])
            Directory.CreateDirectory(Of(folder));
        foreach (
            var file in (string[])
                [
                    "src/a.cs",
                    "demo/a.json",
                    "Directory.Build.props",
                    "Directory.Build.targets",
                    "Directory.Packages.props",
                    "global.json",
                    "BannedSymbols.txt",
                ]
        )
            File.WriteAllText(Of(file), "");
        File.Copy(Path.Combine(Tool.Root, "ohmstead"), Of("ohmstead"));
        File.WriteAllText(Of("bin/dotnet"), StandIn.ReplaceLineEndings("\n"));
#pragma warning disable CA1416 // Never on Windows: the tests are skipped there.
        File.SetUnixFileMode(Of("bin/dotnet"), UnixFileMode.UserRead | UnixFileMode.UserExecute);
#pragma warning restore CA1416
    }

    public void Dispose() => Directory.Delete(root, recursive: true);

    private int Builds => File.Exists(Of("builds")) ? File.ReadAllLines(Of("builds")).Length : 0;

    [Fact]
    public void From_another_folder_it_builds_once_and_runs_with_that_folder_s_paths()
    {
        var said = $"ran in {Of("away")}: check here.sheet.json\n";
        Assert.Equal((0, said), Run("check", "here.sheet.json"));
        Assert.Equal((0, said), Run("check", "here.sheet.json"));
        Assert.Equal(1, Builds);
    }

    [Theory]
    [InlineData("src/a.cs", true)]
    [InlineData("src/new.cs", true)]
    [InlineData("demo/a.json", true)]
    [InlineData("ohmstead", true)]
    [InlineData("src/obj/made.cs", false)]
    [InlineData("README.md", false)]
    public void A_changed_or_added_source_is_built_again_and_nothing_else_is(string file, bool isBuilt)
    {
        Run("check");
        Directory.CreateDirectory(Path.GetDirectoryName(Of(file))!);
        File.AppendAllText(Of(file), "\n");
        File.SetLastWriteTimeUtc(Of(file), DateTime.UtcNow.AddMinutes(1));
        Run("check");
        Assert.Equal(isBuilt ? 2 : 1, Builds);
    }

    [Fact]
    public void A_removed_source_or_program_is_built_again()
    {
        Run("check");
        File.Delete(Of("src/a.cs"));
        Run("check");
        File.Delete(Of(".build/app/ohmstead.dll"));
        Run("check");
        Assert.Equal(3, Builds);
    }

    [Fact]
    public void A_build_that_fails_runs_nothing_shows_why_and_is_tried_again()
    {
        var (code, output, error) = Finish("BROKEN", "check");
        Assert.Equal((1, ""), (code, output));
        Assert.Contains("a missing semicolon", error, StringComparison.Ordinal);
        Assert.Contains("the build failed", error, StringComparison.Ordinal);
        Assert.Equal(0, Run("check").Code);
        Assert.Equal(2, Builds);
    }

    [Fact]
    [Trait("kind", "long")]
    public void The_script_of_the_repository_builds_the_tool_and_runs_it_from_another_folder()
    {
        var folder = Path.GetDirectoryName(Tool.File("here.sheet.json", File.ReadAllText(Tool.Sample)))!;
        var start = new ProcessStartInfo(Path.Combine(Tool.Root, "ohmstead"));
        start.ArgumentList.Add("check");
        start.ArgumentList.Add("here.sheet.json");
        using var process = Tool.Start(start, folder);
        var (code, output, error) = Tool.Finish(process, TimeSpan.FromMinutes(5));
        Assert.True(code == 0, error);
        Assert.StartsWith("no problems", output, StringComparison.Ordinal);
    }

    private string Of(string name) => Path.Combine(root, name);

    private (int Code, string Out) Run(params string[] arguments)
    {
        var (code, output, _) = Finish("", arguments);
        return (code, output);
    }

    private (int Code, string Out, string Error) Finish(string set, params string[] arguments)
    {
        var start = new ProcessStartInfo("bash");
        start.ArgumentList.Add(Of("ohmstead"));
        foreach (var argument in arguments)
            start.ArgumentList.Add(argument);
        start.Environment["PATH"] = $"{Of("bin")}:{Environment.GetEnvironmentVariable("PATH")}";
        start.Environment["BUILDS"] = Of("builds");
        if (set.Length > 0)
            start.Environment[set] = "1";
        using var process = Tool.Start(start, Of("away"));
        return Tool.Finish(process, TimeSpan.FromSeconds(60));
    }
}
