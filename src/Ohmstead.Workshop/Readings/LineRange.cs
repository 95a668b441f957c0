using Ohmstead.Electrical.Reckoning.Standards;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>The line voltage beside what an outlet of a house usually has.</summary>
public static class LineRange
{
    /// <summary>Types that are made for this line are fed by the outlets of American houses [V].</summary>
    private const double LeastPlate = 105;
    private const double MostPlate = 130;

    /// <summary>Said where the line is out of that range; empty where it is not, where nothing was noted, and for other lines.</summary>
    public static string Words(double? supplyVolts, TypeSheet sheet)
    {
        if (supplyVolts is not { } volts || sheet.SupplyHertz != 60 || sheet.SupplyVolts is < LeastPlate or > MostPlate)
            return "";
        var range = $"the usual {ValueText.Plain(SupplyRange.Low)}–{ValueText.Plain(SupplyRange.High)} V (ANSI C84.1, from memory)";
        return volts > SupplyRange.High ? $"Line voltage above {range}. Read it again. The unit runs hotter on it."
            : volts < SupplyRange.Low ? $"Line voltage below {range}. Read it again, at this outlet."
            : "";
    }
}
