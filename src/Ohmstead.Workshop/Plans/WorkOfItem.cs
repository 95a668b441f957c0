using System.Collections.Immutable;

namespace Ohmstead.Workshop.Plans;

/// <summary>
/// What a part of the look-over takes when it is to be replaced. Minutes and prices: common practice, no source; prices invented.
/// </summary>
public static class WorkOfItem
{
    /// <summary>Minutes from and to, with the case open, and what is needed.</summary>
    public static (double From, double To, ImmutableArray<(string Name, decimal Price)> Parts) Of(string item) =>
        item switch
        {
            "cord" => (30, 45, [("cord", 7.50m), ("grommet", 0.80m)]),
            "plug" => (10, 10, [("plug", 2.50m)]),
            "strain-relief" => (10, 10, [("grommet", 0.80m)]),
            "sleeves" => (15, 30, [("sleeving", 0.60m)]),
            "groove" => (10, 20, [("cleaner", 0.50m)]),
            "flats" => (20, 30, [("roller", 4.50m), ("pin", 0.60m)]),
            "posts" => (5, 10, [("nut and washer", 1.80m)]),
            "case" => (20, 40, [("donor cover", 38m)]),
            "handles" => (5, 10, [("handle", 8.50m)]),
            _ => (10, 20, []),
        };

    /// <summary>The middle of a range of minutes, as their law has it: half take less.</summary>
    public static double Middle(double from, double to) => Math.Sqrt(Math.Max(from, 1) * Math.Max(to, 1));
}
