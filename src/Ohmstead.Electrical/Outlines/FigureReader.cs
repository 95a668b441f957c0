using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Outlines;

/// <summary>Numbers of an outline: known, known to lie between two, or unknown.</summary>
internal static class FigureReader
{
    /// <summary>95 % of a normal law lie within this many of its standard deviations to either side.</summary>
    private const double In95Percent = 1.959964;

    /// <summary>A field that must be there, but may be unknown where there is a usual value.</summary>
    public static Figure Required(JsonCursor at, string name, double min, double max, Figure? usual)
    {
        if (at.Has(name))
            return Read(at.At(name), min, max, usual);
        at.Report(name, "is missing", $"a number from {JsonCursor.Show(min)} to {JsonCursor.Show(max)} is required");
        return new(min, 0, Origin.Stated);
    }

    /// <summary>A field that may be left out; null where it is unknown or was.</summary>
    public static Figure? Optional(JsonCursor at, string name, double min, double max)
    {
        if (!at.Has(name) || IsUnknown(at.At(name)))
            return null;
        return Read(at.At(name), min, max, null);
    }

    /// <summary>This place as a number.</summary>
    public static Figure Read(JsonCursor at, double min, double max, Figure? usual)
    {
        if (IsUnknown(at))
        {
            if (usual is not null)
                return usual;
            at.Report("is unknown", "this number is needed: a guess with { \"between\": [low, high] } will do");
            return new(min, 0, Origin.Stated);
        }
        if (at.Element.ValueKind != JsonValueKind.Object)
            return new(at.AsNumber(min, max), 0, Origin.Stated);
        var ends = at.Has("between") ? at.At("between").AsList(10) : [];
        if (ends.Length != 2)
        {
            at.Report("is no number", "a number, { \"between\": [low, high] } or \"unknown\" is expected");
            return new(min, 0, Origin.Stated);
        }
        var (low, high) = (ends[0].AsNumber(Math.Max(min, 1e-6), max), ends[1].AsNumber(Math.Max(min, 1e-6), max));
        if (low >= high)
            at.Report("between", "does not rise", "the lower number first, then the higher");
        return new(Math.Sqrt(low * high), Math.Abs(Math.Log(high / low)) / (2 * In95Percent), Origin.Stated);
    }

    private static bool IsUnknown(JsonCursor at) =>
        at.Element.ValueKind == JsonValueKind.String && at.Element.GetString() == OpenWords.Unknown;
}
