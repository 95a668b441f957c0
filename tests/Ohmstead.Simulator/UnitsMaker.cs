using System.Globalization;
using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>
/// Draws units of a sheet with faults, and reads them through a meter: NNN.readings.json, NNN.truth.json. The sheet as it
/// was is kept beside the folder.
/// </summary>
/// <param name="expected">How many faults are drawn on average. What is noted beside the readings stays the usual number: nobody knows.</param>
internal sealed class UnitsMaker(JsonObject sheet, string folder, int seed, double expected = UnitsMaker.UsualFaults)
{
    public const double UsualFaults = 2;
    private const int Kept = 40;

    /// <summary>Makes what is not there yet.</summary>
    public void Make(int first, int count) => Make(Enumerable.Range(first, count).Where(n => !File.Exists(Stem(n) + ".truth.json")));

    /// <summary>Makes all that are kept again, or those in whose name the pattern occurs.</summary>
    public void Remake(string only) => Make(Enumerable.Range(0, Kept).Where(n => Name(n).Contains(only, StringComparison.Ordinal)));

    private void Make(IEnumerable<int> numbers)
    {
        foreach (int n in numbers)
        {
            Store.Write(Path.Combine(folder, "..", sheet.Word("id") + ".sheet.json"), sheet.DeepClone());
            Make(Stem(n), new Dice(unchecked(seed * 7919 + n)));
            Console.Error.WriteLine(Name(n));
        }
    }

    private string Name(int n) => $"units-{sheet.Word("id")}-{Number(n)}";

    private string Stem(int n) => Path.Combine(folder, Number(n));

    private static string Number(int n) => n.ToString("000", CultureInfo.InvariantCulture);

    private void Make(string stem, Dice dice)
    {
        JsonObject drawn = Spread.Draw(dice, sheet);
        List<Fault> faults = FaultDraw.Draw(dice, sheet, expected);
        double nominal = sheet["supply"]!.AsObject().Number("volts");
        double volts = Math.Round(nominal * dice.Between(0.95, 1.05), 1);
        HashSet<string> taken = Taken(dice);
        using Predictor predictor = new();
        JsonObject values = predictor.Readings(FaultEdits.Apply(drawn, faults), taken.Contains, reading => Real(reading, nominal, volts));
        JsonArray readings = [];
        foreach (JsonObject reading in sheet.Objects("readings"))
        {
            string id = reading.Word("id");
            if (values[id] is not { } value)
                continue;
            JsonObject entry = new() { ["id"] = id, ["value"] = Meter.Read(dice, reading.Word("quantity"), value) };
            if (Real(reading, nominal, volts) is { } real && real != volts)
                entry["supplyVolts"] = real;
            readings.Add(entry);
        }
        Store.WriteLines(
            stem + ".readings.json",
            new JsonObject
            {
                ["ohmstead"] = "readings/1",
                ["sheet"] = sheet.Word("id"),
                ["supplyVolts"] = volts,
                ["expectedFaults"] = UsualFaults,
                ["meter"] = Meter.Describe(),
                ["readings"] = readings,
            },
            "readings"
        );
        Store.Write(
            stem + ".truth.json",
            new JsonArray([
                .. faults.Select(fault => new JsonObject
                {
                    ["element"] = fault.Element,
                    ["mode"] = fault.Mode,
                    ["value"] = fault.Value,
                }),
            ])
        );
    }

    /// <summary>All readings with the case closed, and a random part of the others, at least one.</summary>
    private HashSet<string> Taken(Dice dice)
    {
        JsonObject[] all = [.. sheet.Objects("readings")];
        HashSet<string> taken = [.. all.Where(reading => reading.Word("access") == "closed").Select(reading => reading.Word("id"))];
        List<string> others = [.. all.Select(reading => reading.Word("id")).Where(id => !taken.Contains(id))];
        for (int left = others.Count == 0 ? 0 : dice.Whole(1, others.Count); left > 0; left--)
        {
            string id = dice.Pick(others);
            others.Remove(id);
            taken.Add(id);
        }
        return taken;
    }

    /// <summary>What an alternating source really gave: mains as it was, a lower source in the same proportion.</summary>
    private static double? Real(JsonObject reading, double nominal, double volts)
    {
        if (reading["state"]?["source"] is not JsonObject source || source["directAmps"] is not null)
            return null;
        double asked = source.Number("volts");
        return asked == nominal ? volts : Math.Round(asked * volts / nominal, 2);
    }
}
