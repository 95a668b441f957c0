using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Words;

/// <summary>The ids that the sheet of a unit without a type gives to itself and to what is in it.</summary>
public static class UntypedIds
{
    /// <summary>Its id. No type sheet that comes from a file may have it.</summary>
    public const string Id = "untyped";

    /// <summary>Ids of its readings, parts and steps begin so: they are never a real sheet's.</summary>
    public const string Prefix = "untyped-";

    /// <summary>The reading between the blades.</summary>
    public const string Blades = Prefix + "blades";

    /// <summary>The two blades of the plug.</summary>
    public static ImmutableArray<string> Plug { get; } = ["blade-1", "blade-2"];

    /// <summary>Its readings of insulation begin so.</summary>
    public const string Insulation = Prefix + "insulation-";

    /// <summary>True for the sheet of a unit whose type is not known.</summary>
    public static bool IsOne(TypeSheet? sheet) => sheet?.Id == Id;

    /// <summary>True for an id that such a sheet made.</summary>
    public static bool IsOwn(string id) => id.StartsWith(Prefix, StringComparison.Ordinal);

    /// <summary>What one of its readings reads; null for a reading of another sheet.</summary>
    public static Quantity? QuantityOf(string readingId) =>
        !IsOwn(readingId) ? null
        : readingId.StartsWith(Insulation, StringComparison.Ordinal) ? Quantity.InsulationOhms
        : Quantity.Ohms;
}
