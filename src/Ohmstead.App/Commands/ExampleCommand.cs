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
        var verb = new Verb(
            "example",
            "Run the main job on an invented unit and explain the answer.",
            concernsMains: true,
            "ohmstead example"
        );
        verb.SetAction(_ => Run());
        return verb;
    }

    private static int Run()
    {
        var sheet = TypeSheetFile.Read(Carried("twin-175.sheet.json")).Required;
        var readings = ReadingsFile.Read(Carried("twin-175.example.readings.json"), sheet).Required;
        Console.WriteLine(
            """
            An invented unit is on the bench. Its owner says: the trains slow down, and the whistle is weak.
            Cold checks came first, then 12 V on its plug, then the series lamp, then mains. With files of
            your own: ohmstead diagnose SHEET READINGS

            """
        );
        DiagnosisReport.Print(sheet, readings, DiagnoseCommand.Diagnose(sheet, readings));
        Console.WriteLine();
        Console.WriteLine(Style.Heading("How to read this"));
        Console.WriteLine(
            """
              The first table sets each reading beside what 19 of 20 sound units of this type show on this
              meter, at this line voltage, load and lever position. "!" marks what is clearly outside. The
              last column is what the likeliest faults give: where it meets the measured value, that reading
              is explained.
              The bars are the chance of each fault by itself. Old units often have three to five faults at
              once, so several can be almost certain together. Behind a fault comes its size, and in brackets
              the range that holds it 19 times in 20. Some faults do the same to every reading taken: then
              take the best next reading, or look.
              Cold, low-voltage and case-closed readings come first. None is proposed before the checks that
              it needs have passed. Mains can kill. Tests recorded; no certification.
            """
        );
        return ExitCode.Done;
    }

    private static string Carried(string name)
    {
        using var stream =
            Assembly.GetExecutingAssembly().GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"The program lacks {name}.");
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd();
    }
}
