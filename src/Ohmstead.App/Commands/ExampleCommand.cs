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
        var verb = new Verb("example", "Run the main job on an invented unit and explain the answer.", "ohmstead example");
        verb.SetAction(_ => Run());
        return verb;
    }

    private static int Run()
    {
        var sheet = TypeSheetFile.Read(Carried("twin-175.sheet.json")).Required;
        var readings = ReadingsFile.Read(Carried("twin-175.example.readings.json"), sheet).Required;
        Console.WriteLine("""
            An invented unit is on the bench. Its owner says: the trains slow down, and the whistle is weak.
            Cold checks came first, then 12 V on its plug, then a lamp in series, then mains. With files of
            your own: ohmstead diagnose SHEET READINGS

            """);
        DiagnosisReport.Print(sheet, readings, DiagnoseCommand.Diagnose(sheet, readings, late: DiagnoseCommand.MostTimesLonger));
        Console.WriteLine();
        Console.WriteLine(Style.Heading("How to read this"));
        Console.WriteLine("""
              The first table holds each reading against what 19 of 20 sound units of this kind show on this
              meter, at the line voltage, load and control positions that were so; "!" marks what lies clearly
              outside. The last column is what the likeliest set of faults gives: where it meets the measured
              value, that reading is explained.
              The bars are the probability of each fault by itself, over all sets of faults: old units
              commonly have three to five at once, so several can be near certain together. Behind a fault
              stands its size, and in brackets the range that holds it with 95 %. Where two faults do the
              same to every reading taken, no computation can choose: take what is proposed next, or look.
              Cold, low-voltage and closed ways come first among the next readings; none is proposed before
              the checks that it needs have passed. Mains can kill, and nothing here says that a unit is safe.
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
