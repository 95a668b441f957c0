using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>Which terminals of a circuit are joined by metal, and what a mistake joins that must stay apart.</summary>
internal sealed class Wiring
{
    /// <summary>What joins a breaker's ends with less than this goes around it [Ω].</summary>
    private const double BypassOhms = 1;

    private readonly TypeSheet sheet;
    private readonly ImmutableHashSet<string> mains;
    private readonly HashSet<string> others;

    public Wiring(TypeSheet sheet)
    {
        this.sheet = sheet;
        mains = MainsSide.Of(sheet);
        others = [.. sheet.Elements.SelectMany(MainsSide.Terminals).Where(t => !mains.Contains(t))];
    }

    /// <summary>True when the circuit joins the mains side to a post or to the core, or a breaker's two ends.</summary>
    public bool IsDangerous(TypeSheet wrong)
    {
        if (MainsSide.Reach(wrong, mains).Overlaps(others))
            return true;
        foreach (var breaker in sheet.Elements.Where(e => e.Kind.CanBeBypassed()))
        {
            var at = wrong.Elements.First(e => e.Id == breaker.Id);
            if (at is Resistive { Ohms: < BypassOhms / 100 } left && breaker is Resistive own && left.Ohms < own.Ohms)
                return true;
            var without = wrong with
            {
                Elements = [.. wrong.Elements.Where(e => e.Id != breaker.Id && e is Resistive { Ohms: < BypassOhms })],
            };
            if (MainsSide.Reach(without, [breaker.From]).Contains(breaker.To))
                return true;
        }
        return false;
    }
}
