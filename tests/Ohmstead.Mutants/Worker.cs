using System.Globalization;
using System.Reflection;

namespace Ohmstead.Mutants;

/// <summary>
/// A process in which classes of tests run again and again, with one mistake awake or none: starting the runtime and compiling the core anew
/// costs more than most tests. It reads a question a line and answers each with a line.
/// </summary>
internal static class Worker
{
    /// <summary>What this program is called with to be one.</summary>
    public const string Word = "worker";

    /// <summary>In place of a mistake's number: all sleep.</summary>
    public const int Asleep = -1;

    /// <summary>All sleep, and the answer says which it came by, and how often.</summary>
    public const int Counted = -2;

    /// <summary>A question: a mistake's number and the names of classes. An answer: "passed" or "failed", milliseconds of processor, number:times.</summary>
    public static async Task<int> RunAsync()
    {
        var (questions, answers) = (Console.In, Console.Out);
        Console.SetOut(TextWriter.Null);
        Console.SetError(TextWriter.Null);
        var tests = Assembly.Load("Ohmstead.Electrical.Tests");
        var runner = Assembly.Load("xunit.v3.runner.inproc.console").GetType("Xunit.Runner.InProc.SystemConsole.ConsoleRunner", true)!;
        var entry = runner.GetMethod("EntryPoint")!;
        var mistake = Assembly.Load("Ohmstead.Electrical").GetType("Mistake", true)!;
        var (awake, came) = (mistake.GetField("Awake")!, (int[])mistake.GetField("Came")!.GetValue(null)!);
        while (await questions.ReadLineAsync() is { } question)
        {
            var words = question.Split(' ');
            string[] asked = [.. words.Skip(1).SelectMany(c => new[] { "-class", c })];
            var number = int.Parse(words[0], CultureInfo.InvariantCulture);
            Array.Clear(came);
            awake.SetValue(null, number);
            var before = Environment.CpuUsage.TotalTime;
            var run = Activator.CreateInstance(
                runner,
                (string[])[.. asked, "-trait-", "kind=long", "-stopOnFail", "-maxThreads", "1", "-noLogo", "-noColor"],
                tests
            )!;
            var code = await (Task<int>)entry.Invoke(run, [TextReader.Null, TextWriter.Null])!;
            (run as IDisposable)?.Dispose();
            awake.SetValue(null, Asleep);
            var took = (Environment.CpuUsage.TotalTime - before).TotalMilliseconds;
            var seen =
                number == Counted
                    ? came.Index().Where(c => c.Item > 0).Select(c => FormattableString.Invariant($" {c.Index}:{c.Item}"))
                    : [];
            await answers.WriteLineAsync(
                FormattableString.Invariant($"{(code == 0 ? "passed" : "failed")} {took:F0}") + string.Concat(seen)
            );
            await answers.FlushAsync();
        }
        return 0;
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
