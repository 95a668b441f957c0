using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Browser.Tests;

/// <summary>A unit of the invented workshop with one fault: what a meter shows on it, as it is typed.</summary>
internal sealed class FaultyUnit
{
    private readonly UnitModel model;
    private readonly AssumedFault fault;

    /// <param name="sheet">Its kind.</param>
    /// <param name="mode">The fault, as "element:mode".</param>
    /// <param name="size">In the unit of the mode.</param>
    public FaultyUnit(string sheet, string mode, double size)
    {
        model = new UnitModel(TypeSheetFile.Read(File.ReadAllText(RunningTool.SheetFile(sheet))).Required);
        fault = new AssumedFault(new FaultCatalogue(model).Modes.Single(m => m.Name == mode), size);
    }

    public string Read(string reading)
    {
        var spec = model.Sheet.FindReading(reading)!;
        var value = Prediction.Run(model, [(spec, spec.State)], [fault])[0].Value;
        if (double.IsInfinity(value))
            return "OL";
        return value >= 1e6
            ? (value / 1e6).ToString("0.#", CultureInfo.InvariantCulture) + "M"
            : value.ToString("0.###", CultureInfo.InvariantCulture);
    }
}
