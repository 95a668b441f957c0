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
            { Max: double.PositiveInfinity } l => $"{Owner(spec, l.MinSource)} limit, {Of(spec)}",
            { Min: double.NegativeInfinity } l => $"{Owner(spec, l.MaxSource)} limit, {Of(spec)}",
            var l when l.MinSource == l.MaxSource => $"{Owner(spec, l.MinSource)} limits, {Of(spec)}",
            var l => $"the limits, {Of(spec)}: the least is {Owner(spec, l.MinSource)}, the most {Owner(spec, l.MaxSource)}",
        };

    private static string Owner(ReadingSpec spec, LimitSource source) =>
        source == LimitSource.Shop ? "the shop's"
        : UntypedIds.IsOwn(spec.Id) ? "the usual"
        : "the type sheet's";
}
