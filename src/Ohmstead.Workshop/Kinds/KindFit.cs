using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Kinds;

/// <summary>Fitting a sheet to units found sound.</summary>
public static class KindFit
{
    /// <summary>Why a unit cannot be fitted to; empty when it can.</summary>
    public static string Unfit(BenchUnit unit)
    {
        if (unit.IsPractice)
            return "a practice unit, its readings are invented";
        if (!unit.CurrentReadings.Any(r => r.Fact.Shown.Kind == ShownKind.Value))
            return "no readings since its last repair";
        return unit.All<PartChanged>()
            .Any(p => p.Fact.Change is PartChange.Replaced or PartChange.Removed or PartChange.Added or PartChange.Moved)
            ? "its circuit was changed"
            : "";
    }

    /// <summary>True for a unit whose findings are done, or that went back working, and in which nothing confirmed is left unrepaired.</summary>
    public static bool IsFoundSound(BenchUnit unit) =>
        (unit.ClosedStages.Contains(Stage.Findings) || unit.HandedBack?.Manner == ReturnManner.Working) && !unit.Unrepaired.Any();

    /// <summary>Fits. Cost: units × readings × parameters solutions a round, some seconds.</summary>
    public static FitResult Run(UnitModel kind, IEnumerable<BenchUnit> units, Shop shop) =>
        Fit.Run(kind, [.. units.Select(u => BenchReadings.Of(u, kind, shop).Value).OfType<UnitReadings>()]);

    /// <summary>True for a spread, false for a value.</summary>
    public static bool IsSpread(FittedParameter parameter) => parameter.Path.Contains(".spread.", StringComparison.Ordinal);

    /// <summary>
    /// The sheet's text with the determined values in it, to four digits; spreads, and values that the text does not spell out,
    /// are left as they are and counted.
    /// </summary>
    public static (string Text, int Put, int Left) Apply(string text, TypeSheet sheet, IEnumerable<FittedParameter> parameters)
    {
        var (put, left) = (0, 0);
        foreach (var parameter in parameters.Where(p => p.Determined))
        {
            var changed = PathIn(sheet, parameter.Path) is { } path ? KindText.Put(text, path, Digits(parameter.Value)) : text;
            if (ReferenceEquals(changed, text))
                left++;
            else
                put++;
            text = changed;
        }
        return (text, put, left);
    }

    /// <summary>A parameter in words: "primary, ohms", "roller of track 1, spread of contact ohms".</summary>
    public static string Name(TypeSheet sheet, FittedParameter parameter)
    {
        var parts = parameter.Path.Split('.');
        var isSpread = parts.Length > 3 && parts[^2] == "spread";
        var id = string.Join('.', parts[1..(isSpread ? ^2 : ^1)]);
        var of = parts[0] == "cores" ? PartNames.Core(sheet, id) : PartNames.Of(sheet, id);
        var field = string.Concat(parts[^1].Select(c => char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : c.ToString()));
        return $"{of}, {(isSpread ? "spread of " : "")}{field}";
    }

    /// <summary>A figure of a parameter with its unit: "1.38 kΩ", "12 %" for a spread.</summary>
    /// <param name="value">The value, or its standard error.</param>
    public static string Figure(FittedParameter parameter, double value) =>
        parameter.Path.Contains(".spread.", StringComparison.Ordinal) ? $"{ValueText.PercentOf(value)} %"
        : parameter.Path.EndsWith("hms", StringComparison.Ordinal) ? ValueText.Of(value, Quantity.Ohms)
        : parameter.Path.EndsWith("olts", StringComparison.Ordinal) ? ValueText.Of(value, Quantity.AcVolts)
        : parameter.Path.EndsWith("mps", StringComparison.Ordinal) ? ValueText.Of(value, Quantity.AcAmps)
        : parameter.Path.EndsWith("enries", StringComparison.Ordinal) ? $"{ValueText.Number(value * 1000)} mH"
        : ValueText.Number(value);

    private static string Digits(double value) =>
        double.Parse(value.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture)
            .ToString("R", CultureInfo.InvariantCulture);

    /// <summary><c>elements.primary.ohms</c> as a JSON path; null for what a sheet does not hold as one number.</summary>
    internal static string? PathIn(TypeSheet sheet, string path)
    {
        var parts = path.Split('.');
        if (parts.Length < 3 || path.Contains(".spread.", StringComparison.Ordinal) || parts[^1] is "excitation" or "turns")
            return null;
        var (id, field) = (string.Join('.', parts[1..^1]), parts[^1]);
        string At(int n) => n.ToString(CultureInfo.InvariantCulture);
        if (parts[0] == "cores")
            return Index(sheet.Cores, c => c.Id == id) is { } core ? $"$.cores[{At(core)}].{field}" : null;
        if (Index(sheet.Elements, e => e.Id == id) is { } element)
            return $"$.elements[{At(element)}].{field}";
        for (var n = 0; n < sheet.Elements.Length; n++)
            if (sheet.Elements[n] is Winding w && Index(w.Sliders, s => s.Id == id) is { } slider)
                return $"$.elements[{At(n)}].sliders[{At(slider)}].{field}";
        return null;
    }

    private static int? Index<T>(ImmutableArray<T> items, Func<T, bool> isIt)
    {
        for (var n = 0; n < items.Length; n++)
            if (isIt(items[n]))
                return n;
        return null;
    }
}
