using System.CommandLine;
using System.CommandLine.Invocation;
using System.Globalization;
using System.Text;
using Ohmstead.App.Commands;
using Ohmstead.Storage;
using Ohmstead.Workshop.Cautions;

// Numbers are culture-free in and out; the parser of the command line would use the user's culture otherwise.
CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;

var root = new RootCommand(
    "Ohmstead: bench work on vintage low-voltage toy-train power transformers. Without a command it starts your workshop, for the browser."
)
{
    CheckCommand.Make(),
    DraftCommand.Make(),
    IdentifyCommand.Make(),
    PredictCommand.Make(),
    DiagnoseCommand.Make(),
    FitCommand.Make(),
    PlanCommand.Make(),
    RewireCommand.Make(),
    ContinuityCommand.Make(),
    ReckonCommand.Make(),
    ListenCommand.Make(),
    PrintCommand.Make(),
    ExampleCommand.Make(),
    CompletionCommand.Make(),
    ServeCommand.MakeDemo(),
    BackupCommand.Make(),
    RestoreCommand.Make(),
    ExportCommand.Make(),
    ImportCommand.Make(),
    MergeCommand.Make(),
    MoveCommand.Make(),
};
ServeCommand.PutInto(root);
HelpWithExamples.PutInto(root);

try
{
    Console.OutputEncoding = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false);
    Console.SetOut(new CleanWriter(Console.Out));
    Console.SetError(new CleanWriter(Console.Error));
    return Run(root.Parse(args));
}
catch (RefusedInput refused)
{
    foreach (var line in refused.Lines)
        Console.Error.WriteLine(line);
    return ExitCode.Refused;
}
catch (StoreUnusable unusable)
{
    Console.Error.WriteLine($"ohmstead: {unusable.Message.ReplaceLineEndings(" ")}");
    return ExitCode.Broken;
}
catch (Exception broken)
{
    Console.Error.WriteLine($"ohmstead: {broken.Message.ReplaceLineEndings(" ")} ({broken.GetType().Name})");
    return ExitCode.Broken;
}

static int Run(ParseResult parsed)
{
    var settings = new InvocationConfiguration { EnableDefaultExceptionHandler = false };
    if (parsed.Action is not ParseErrorAction mistake)
    {
        var code = parsed.Invoke(settings);
        // JSON is read by programs: they get one object and nothing else.
        if (code == ExitCode.Done && parsed.CommandResult.Command is Verb { ConcernsMains: true } && !IsJson(parsed))
            Console.WriteLine($"\n{CautionTable.LocalCodes}");
        return code;
    }
    WrongUse.Say(parsed, mistake);
    return ExitCode.Refused;
}

static bool IsJson(ParseResult parsed) =>
    parsed.CommandResult.Command.Options.OfType<Option<bool>>().Any(o => o.Name == "--json" && parsed.GetValue(o));
