using System.CommandLine;
using System.CommandLine.Invocation;
using System.Globalization;
using Ohmstead.App.Commands;

// Numbers are culture-free in and out; the parser of the command line would use the user's culture otherwise.
CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;

var root = new RootCommand("Ohmstead: bench work on vintage low-voltage toy-train power transformers. Tests recorded; no certification.")
{
    CheckCommand.Make(),
    PredictCommand.Make(),
    DiagnoseCommand.Make(),
    FitCommand.Make(),
    ExampleCommand.Make(),
    CompletionCommand.Make(),
};

var parsed = root.Parse(args);
if (parsed.Action is ParseErrorAction)
{
    foreach (var error in parsed.Errors) Console.Error.WriteLine(error.Message);
    Console.Error.WriteLine("Try --help.");
    return ExitCode.Refused;
}
try
{
    return parsed.Invoke(new InvocationConfiguration { EnableDefaultExceptionHandler = false });
}
catch (RefusedInput refused)
{
    foreach (var line in refused.Lines) Console.Error.WriteLine(line);
    return ExitCode.Refused;
}
catch (Exception broken) when (broken is not OutOfMemoryException)
{
    Console.Error.WriteLine($"ohmstead: something broke that should not: {broken.Message} ({broken.GetType().Name})");
    return ExitCode.Broken;
}
