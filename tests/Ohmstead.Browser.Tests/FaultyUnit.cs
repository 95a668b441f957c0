using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Browser.Tests;

/// <summary>A unit of the invented workshop with one fault or one mistake in its wiring: what a meter shows on it, as it is typed.</summary>
internal sealed class FaultyUnit
{
    private readonly UnitModel model;

    /// <summary>What the probes of the shop's first meter show when joined [Ω]; a check of a rewire minds them.</summary>
    private readonly double leadOhms;

    private readonly System.Collections.Immutable.ImmutableArray<AssumedFault> faults;

    /// <param name="sheet">Its kind.</param>
    /// <param name="mode">The fault, as "element:mode".</param>
    /// <param name="size">In the unit of the mode.</param>
    public FaultyUnit(string sheet, string mode, double size)
    {
        model = new UnitModel(SheetOf(sheet));
        faults = [new AssumedFault(new FaultCatalogue(model).Modes.Single(m => m.Name == mode), size)];
    }

    private FaultyUnit(TypeSheet wired) => (model, faults, leadOhms) = (new UnitModel(wired), [], 0.2);

    /// <summary>Its type sheet.</summary>
    public TypeSheet Sheet => model.Sheet;

    /// <summary>A sound unit.</summary>
    public static FaultyUnit Sound(string sheet) => new(SheetOf(sheet));

    /// <summary>A unit wired with one mistake, by its id in the formats.</summary>
    public static FaultyUnit Wired(string sheet, string mistake) =>
        new(MistakeList.Of(SheetOf(sheet)).Single(m => m.Id == mistake) is var m ? m.Make(SheetOf(sheet), m.Sizes[0]) : null!);

    private static TypeSheet SheetOf(string sheet) => TypeSheetFile.Read(File.ReadAllText(RunningTool.SheetFile(sheet))).Required;

    public string Read(string reading)
    {
        var spec = model.Sheet.FindReading(reading)!;
        var value = Prediction.Run(model, [(spec, spec.State)], faults, isAveraging: leadOhms > 0)[0].Value;
        if (spec.Quantity == Quantity.Ohms)
            value += leadOhms;
        if (double.IsInfinity(value))
            return "OL";
        return value >= 1e6
            ? (value / 1e6).ToString("0.#", CultureInfo.InvariantCulture) + "M"
            : value.ToString("0.###", CultureInfo.InvariantCulture);
    }
}
