namespace Ohmstead.Electrical.Reckoning.Standards;

/// <summary>The blades of a polarized plug, of which one is wider: it goes in one way (page seen; sizes of NEMA 1-15P from memory).</summary>
public static class PlugBlades
{
    /// <summary>The wide one, of the neutral [in].</summary>
    public const double WideInches = 5 / 16.0;

    /// <summary>The other one [in].</summary>
    public const double NarrowInches = 1 / 4.0;

    /// <summary>For a person.</summary>
    public const string Words = "A polarized plug has one wide blade, 5/16 in against 1/4 in. It goes in one way.";
}
