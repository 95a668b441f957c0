using System.Collections.Immutable;

namespace Ohmstead.Electrical.Planning;

/// <summary>The checks that prove a unit's net list, in the order in which the clips move least.</summary>
/// <param name="Checks">Joined first, then apart.</param>
/// <param name="Pairs">Checks of every terminal against every other that the list replaces.</param>
/// <param name="LeftToOthers">
/// Groups of nets, each named by its first terminal, that this meter cannot tell apart, or that the checks do not because the search
/// for gangs came to its bound: the low-voltage readings must.
/// </param>
public sealed record ContinuityPlan(ImmutableArray<ContinuityCheck> Checks, int Pairs, ImmutableArray<ImmutableArray<string>> LeftToOthers)
{
    /// <summary>All of it [min].</summary>
    public double Minutes => Checks.Sum(c => c.Minutes);

    /// <summary>How many circuits were solved for it.</summary>
    public long Solutions { get; init; }
}

/// <summary>One check with an ohmmeter on the dead, open unit.</summary>
/// <param name="IsJoined">The two clips must be on one net; otherwise the two gangs of clips must be on nets that stay apart.</param>
/// <param name="First">Terminals on the first lead.</param>
/// <param name="Second">Terminals on the second lead.</param>
/// <param name="Ohms">What a rightly wired unit of nominal values shows [Ω]; infinity for OL.</param>
/// <param name="Minutes">Half a minute for each clip that is put on or goes to the other lead, a quarter for the check.</param>
public sealed record ContinuityCheck(
    bool IsJoined,
    ImmutableArray<string> First,
    ImmutableArray<string> Second,
    double Ohms,
    double Minutes
);
