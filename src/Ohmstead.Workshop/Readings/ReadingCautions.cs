using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Cautions;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>What to heed at a reading: the sheet's own hazard, the kick of what is fed, and the table's cautions. None replaces another.</summary>
public static class ReadingCautions
{
    /// <summary>All of them, what this reading alone has first; what the table says in as many words or more is said once.</summary>
    /// <param name="state">The state as it really is.</param>
    public static ImmutableArray<string> Of(UnitModel model, ReadingSpec spec, ReadingState state)
    {
        var table = CautionTable.OfReading(spec);
        return [.. Own(model, spec, state).Where(own => !CautionTable.Says(table, own)), .. table];
    }

    /// <summary>What this reading alone has: its sheet's hazard, and its kick.</summary>
    public static ImmutableArray<string> Own(UnitModel model, ReadingSpec spec, ReadingState state)
    {
        var own = ImmutableArray.CreateBuilder<string>();
        // The screen shows the first at once and folds the others: what to do with the clips comes before why.
        var kick = InductiveKick.Of(model, spec, state);
        if (kick is not null)
            own.AddRange(CautionTable.For(Act.FeedDirect));
        if (spec.Hazard.Length > 0)
            own.Add(spec.Hazard);
        if (kick is not null)
            own.Add(Words(kick));
        return own.ToImmutable();
    }

    /// <summary>"Switch at the supply, with a clamp diode across the clips. Broken at the winding, up to 15 mJ are let go …"</summary>
    private static string Words(InductiveKick kick)
    {
        const string clamp = "Switch at the supply, with a clamp diode across the clips.";
        var stored = $"Broken at the winding, up to {ValueText.Number(kick.Joules * 1000)} mJ let go";
        return kick.BladeVoltsPerVolt is { } times
            ? $"{clamp} {stored}: each volt across the break is {ValueText.Number(times)} V between the plug blades."
            : $"{clamp} {stored}.";
    }
}
