using System.Globalization;
using System.Runtime.CompilerServices;

namespace Ohmstead.Electrical.Tests;

/// <summary>Every test of this project runs where a comma stands for the point: text of the core must not notice.</summary>
internal static class CommaCulture
{
    public static CultureInfo Culture { get; } = Make();

    [ModuleInitializer]
    internal static void Begin() => CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = Culture;

    private static CultureInfo Make()
    {
        // No named culture: globalization is invariant here, and only its copy can be given a comma.
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        return culture;
    }
}
