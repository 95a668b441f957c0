using System.CommandLine;
using System.Reflection;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary><c>example</c>: the main job on an invented unit that the program carries with it.</summary>
internal static class ExampleCommand
{
    public static Command Make()
    {
        var command = new Command("example", "Run the main job on an invented unit and explain the answer.\nExample: ohmstead example");
        command.SetAction(_ => Run());
        return command;
    }

    private static int Run()
    {
        var sheet = TypeSheetFile.Read(Carried("twin-175.sheet.json")).Required;
        var readings = ReadingsFile.Read(Carried("twin-175.example.readings.json"), sheet).Required;
        Console.WriteLine("An invented unit on the bench. Its owner says: it slows under load, and the whistle is weak.");
        Console.WriteLine(FormattableString.Invariant($"{readings.Readings.Count(r => r.IsTaken)} readings were taken at {readings.SupplyVolts} V. The same with files of your own: ohmstead diagnose SHEET READINGS"));
        Console.WriteLine();
        DiagnosisReport.Print(sheet, readings, DiagnoseCommand.Diagnose(sheet, readings));
        Console.WriteLine("""

            How to read this
              The first table holds each reading against what sound units of this kind show, under the line voltage,
              load and meter that were really used. "Normal" means: within what spread and meter explain.
              The bars are probabilities of each fault by itself, over all sets of faults; several can be near
              certain at once, as old units commonly have three to five. Where two faults do the same to every
              reading taken, no computation can choose: take the next reading that is proposed, or look.
              Mains can kill. Cold checks come first; nothing here says that a unit is safe.
            """);
        return ExitCode.Done;
    }

    private static string Carried(string name)
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The program lacks {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
