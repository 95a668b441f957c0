using System.Collections.Concurrent;
using System.Diagnostics;
using System.Text.Json;

namespace Ohmstead.App.Tests;

/// <summary>Runs the built program as a process, as its user does.</summary>
internal static class Tool
{
    private static readonly ConcurrentDictionary<string, Lazy<(int Code, string Out, string Error)>> Ran = new(StringComparer.Ordinal);

    public static string Root { get; } = FindRoot();

    public static string Sample => Path.Combine(Root, "tests/Reference/sample/twin-160.sheet.json");

    public static string Case(string number) => Path.Combine(Root, $"tests/Reference/sample/cases/{number}.readings.json");

    public static string Reference(string name) => Path.Combine(Root, "tests/Reference", name);

    public static string Demo(string name) => Path.Combine(Root, "demo", name);

    public static (int Code, string Out, string Error) Run(params string[] arguments) => Run(arguments, null);

    /// <summary>The same for a line that several tests read and none changes anything by: it is run once for all of them.</summary>
    public static (int Code, string Out, string Error) RunOnce(params string[] arguments) =>
        Ran.GetOrAdd(string.Join('\0', arguments), _ => new(() => Run(arguments))).Value;

    public static (int Code, string Out, string Error) Run(string[] arguments, string? language)
    {
        using var process = Start(arguments, language);
        return Finish(process, TimeSpan.FromSeconds(60));
    }

    /// <summary>Starts the program with both outputs caught.</summary>
    public static Process Start(string[] arguments, string? language = null)
    {
        var start = new ProcessStartInfo("dotnet");
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "ohmstead.dll"));
        foreach (var a in arguments)
            start.ArgumentList.Add(a);
        if (language is not null)
            start.Environment["LC_ALL"] = language;
        return Start(start, Path.GetTempPath());
    }

    public static Process Start(ProcessStartInfo start, string folder)
    {
        (start.RedirectStandardOutput, start.RedirectStandardError, start.WorkingDirectory) = (true, true, folder);
        return Process.Start(start)!;
    }

    /// <summary>Waits for the end; a program that takes longer than it may is killed and fails the test.</summary>
    public static (int Code, string Out, string Error) Finish(Process process, TimeSpan most)
    {
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(most))
        {
            process.Kill(entireProcessTree: true);
            Assert.Fail("the program hangs");
        }
        return (process.ExitCode, output.Result, error.Result);
    }

    /// <summary>Runs with --json; standard output must hold exactly one object, standard error nothing.</summary>
    public static JsonElement Json(params string[] arguments)
    {
        var (code, output, error) = Run([.. arguments, "--json"]);
        Assert.True(code == 0, error);
        Assert.Equal("", error);
        var root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(JsonValueKind.Object, root.ValueKind);
        return root;
    }

    /// <summary>Writes a file into a folder of its own and gives its path.</summary>
    public static string File(string name, string text)
    {
        var path = Path.Combine(Directory.CreateTempSubdirectory("ohmstead-test-").FullName, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx")))
            folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("the tests run outside the repository");
    }
}
