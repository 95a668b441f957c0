using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>The limits of a check, in words, and who asks for them.</summary>
public static class LimitWords
{
    /// <summary>"at least 2.00 MΩ", "4.70–8.20 Ω"; empty where there is none.</summary>
    public static string Of(ReadingSpec spec) =>
        spec.Limits switch
        {
            null => "",
            { Max: double.PositiveInfinity } l => $"at least {ValueText.Of(l.Min, spec.Quantity)}",
            { Min: double.NegativeInfinity } l => $"at most {ValueText.Of(l.Max, spec.Quantity)}",
            var l => ValueText.Band(l.Min, l.Max, spec.Quantity),
        };

    /// <summary>"the shop's limit, at least 2.00 MΩ"; of two sources at once both are named.</summary>
    public static string WithSource(ReadingSpec spec) =>
        spec.Limits switch
        {
            null => "its limits",
            { Max: double.PositiveInfinity } l => $"{Owner(l.MinSource)} limit, {Of(spec)}",
            { Min: double.NegativeInfinity } l => $"{Owner(l.MaxSource)} limit, {Of(spec)}",
            var l when l.MinSource == l.MaxSource => $"{Owner(l.MinSource)} limits, {Of(spec)}",
            var l => $"the limits, {Of(spec)}: the least is {Owner(l.MinSource)}, the most {Owner(l.MaxSource)}",
        };

    private static string Owner(LimitSource source) => source == LimitSource.Shop ? "the shop's" : "the type sheet's";
}
