using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Carrying;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Tests.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Carrying;

/// <summary>The load that a pair of posts is said to carry, put on it in ngspice: its volts, and the volts across its breaker.</summary>
public class OutletSpiceTests
{
    [Theory]
    [InlineData("demo/twin-175.sheet.json", "load-1", "breaker-1")]
    [InlineData("demo/twin-175.sheet.json", "load-8", "")]
    [InlineData("demo/solo-110.sheet.json", "track-load", "breaker")]
    [InlineData("demo/step-230.sheet.json", "lights-load", "cut-out")]
    public void The_volts_and_the_breaker_s_amps_under_that_load_are_those_of_ngspice(string file, string reading, string breaker)
    {
        Assert.SkipUnless(NgspiceRun.IsThere, "ngspice is not installed here (Debian: apt-get install ngspice).");
        var sheet = Reference.Sheet(file);
        var spec = sheet.FindReading(reading)!;
        var limit = OutletLimits.Of(new UnitModel(sheet), spec, sheet.UsableWatts)!;
        var shown = NgspiceRun.Predict(Written(sheet, spec, limit.LoadOhms, breaker), []);
        var volts = shown[reading]!.GetValue<double>();
        Assert.InRange(volts, limit.LoadedVolts - 0.02, limit.LoadedVolts + 0.02);
        Assert.InRange(volts / limit.LoadOhms, limit.Amps * 0.998, limit.Amps * 1.002);
        if (breaker.Length == 0)
            return;
        var part = (Resistive)sheet.Elements.First(e => e.Id == breaker);
        var amps = shown["across-breaker"]!.GetValue<double>() / part.Ohms;
        Assert.True(amps <= part.RatedAmps * 1.002, amps.ToString(CultureInfo.InvariantCulture));
        if (limit.By == HeldBy.Breaker)
            Assert.InRange(amps, part.RatedAmps * 0.998, part.RatedAmps * 1.002);
        Assert.True(limit.IsProtected);
    }

    /// <summary>The sheet with that load on the pair, and a reading across the breaker at the same time.</summary>
    private static string Written(TypeSheet sheet, ReadingSpec spec, double ohms, string breaker)
    {
        var document = TypeSheetFile.JsonOf(sheet);
        var readings = document["readings"]!.AsArray();
        var kept = readings.Where(r => Stays(r!, spec.Id)).Select(r => r!.DeepClone()).ToList();
        var loaded = kept.Single(r => r["id"]!.GetValue<string>() == spec.Id);
        loaded["state"]!["loads"] = new JsonArray(
            new JsonObject
            {
                ["from"] = spec.From,
                ["to"] = spec.To,
                ["ohms"] = ohms,
            }
        );
        if (breaker.Length > 0)
        {
            var (part, across) = (sheet.Elements.First(e => e.Id == breaker), loaded.DeepClone());
            (across["id"], across["between"], across["quantity"]) = ("across-breaker", new JsonArray(part.From, part.To), "ac-volts");
            kept.Add(across);
        }
        document["readings"] = new JsonArray([.. kept]);
        document.Remove("observations");
        var path = Path.Combine(Directory.CreateTempSubdirectory("ohmstead-test-").FullName, "loaded.sheet.json");
        File.WriteAllText(path, document.ToJsonString());
        return path;
    }

    /// <summary>The reading itself and what must have passed before it.</summary>
    private static bool Stays(JsonNode reading, string id) =>
        reading["id"]!.GetValue<string>() == id
        || reading["gate"] is not null
        || reading["id"]!.GetValue<string>().StartsWith("lamp-", StringComparison.Ordinal);
}
