using System.Diagnostics;
using System.Text.Json;

namespace Ohmstead.App.Tests;

/// <summary>Runs the built program as a process, as its user does.</summary>
internal static class Tool
{
    public static string Root { get; } = FindRoot();

    public static string Sample => Path.Combine(Root, "tests/Reference/contract/twin-160.sheet.json");

    public static string Case(string number) => Path.Combine(Root, $"tests/Reference/contract/cases/{number}.readings.json");

    public static string Demo(string name) => Path.Combine(Root, "demo", name);

    public static (int Code, string Out, string Error) Run(params string[] arguments) => Run(arguments, null);

    public static (int Code, string Out, string Error) Run(string[] arguments, string? language)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true, WorkingDirectory = Path.GetTempPath() };
        start.ArgumentList.Add(Path.Combine(AppContext.BaseDirectory, "ohmstead.dll"));
        foreach (var a in arguments) start.ArgumentList.Add(a);
        if (language is not null) start.Environment["LC_ALL"] = language;
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        Assert.True(process.WaitForExit(TimeSpan.FromSeconds(60)), "the program hangs");
        return (process.ExitCode, output, error.Result);
    }

    /// <summary>Runs with --json; standard output must hold exactly one object.</summary>
    public static JsonElement Json(params string[] arguments)
    {
        var (code, output, error) = Run([.. arguments, "--json"]);
        Assert.True(code == 0, error);
        return JsonDocument.Parse(output).RootElement;
    }

    /// <summary>Writes a file into a folder of its own and gives its path.</summary>
    public static string File(string name, string text)
    {
        var folder = Directory.CreateTempSubdirectory("ohmstead-test-").FullName;
        var path = Path.Combine(folder, name);
        System.IO.File.WriteAllText(path, text);
        return path;
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !System.IO.File.Exists(Path.Combine(folder.FullName, "Ohmstead.slnx"))) folder = folder.Parent;
        return folder?.FullName ?? throw new InvalidOperationException("the tests run outside the repository");
    }
}
