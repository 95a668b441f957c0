namespace Ohmstead.Electrical.TypeSheets;

/// <summary>How far sound units differ where a sheet does not say: relative standard deviations (common practice, no source).</summary>
internal static class UsualSpread
{
    /// <summary>Of a field of a part of some kind; 0 for what does not differ.</summary>
    public static double Of(string kind, string field) =>
        (kind, field) switch
        {
            ("resistor" or "winding", "ohms") => 0.08,
            ("insulation", "ohms") => 0.7,
            ("wire" or "joint" or "breaker", "ohms") => 0.25,
            ("winding", "turns") => 0.006,
            ("winding", "leakageHenries") => 0.2,
            (ModeTable.SliderKind, "contactOhms") => 0.4,
            ("rectifier", "saturationAmps" or "leakageOhms") => 0.5,
            ("rectifier", "seriesOhms") => 0.3,
            ("core", "lossOhms") => 0.10,
            ("core", "excitation" or "magnetisingHenries") => 0.12,
            _ => 0,
        };
}
