namespace Ohmstead.Electrical.Diagnosis;

/// <summary>How long and how widely the search for sets of faults looks. Each default says why.</summary>
public sealed record DiagnosisOptions
{
    /// <summary>Sets of faults whose neighbourhood is searched: enough that the remaining ones carry little, see docs/diagnosis.md.</summary>
    public int MostExpanded { get; init; } = 30;

    /// <summary>Sets expanded before the clock is asked: with fewer an answer is worth less than the wait.</summary>
    public int LeastExpanded { get; init; } = 8;

    /// <summary>Additions to a set that are solved exactly, best first by the quick estimate: further ones rarely win.</summary>
    public int ExactAdditions { get; init; } = 12;

    /// <summary>Exchanges for each member of a set that are solved exactly.</summary>
    public int ExactExchanges { get; init; } = 5;

    /// <summary>Most faults in a set: the chance of more is below 1 in 10⁵ at the usual chances.</summary>
    public int MostFaults { get; init; } = 9;

    /// <summary>
    /// A set this many nats below the best is not expanded any more. It would carry less than 1/2,000 of its weight; but before its
    /// own sizes are fitted a set can stand several nats too low.
    /// </summary>
    public double Margin { get; init; } = 8;

    /// <summary>
    /// Readings solved by the search before the margin counts: with few readings or few faults, all sets that carry anything are
    /// looked at for less than it takes to start.
    /// </summary>
    public int CheapSolutions { get; init; } = 5000;

    /// <summary>
    /// Chance that a reading is wrong altogether (a slipped probe, a misread range, a supply in its limit). Common practice, no
    /// source; it bounds what one reading can say against a set of faults.
    /// </summary>
    public double WrongReadingChance { get; init; } = 1e-3;

    /// <summary>True when the time is up; asked between expansions, once there were <see cref="LeastExpanded"/>. The clock belongs to the caller.</summary>
    public Func<bool> IsTimeUp { get; init; } = () => false;

    /// <summary>True when the least number of sets is too much too: asked once half of them were expanded.</summary>
    public Func<bool> IsLate { get; init; } = () => false;

    /// <summary>
    /// True when it must come to an end at once: asked everywhere, also while it is worked out what each fault does to the readings of a
    /// large sheet. What was not looked at by then keeps its own chance. What the sound unit shows, and how that varies, is
    /// always worked out: without it no answer would be honest.
    /// </summary>
    public Func<bool> IsOverdue { get; init; } = () => false;

    /// <summary>Told the share done [0..1] and the best set's number of faults.</summary>
    public Action<double>? Progress { get; init; }

    /// <summary>Stops the search early; what was found so far is returned.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>The caller does not want to wait any longer.</summary>
    internal bool IsOver() => Cancellation.IsCancellationRequested || IsOverdue();

    /// <summary>Threads used.</summary>
    public int Threads { get; init; } = 2;

    /// <summary>Untaken readings are ranked when true; costs about a tenth of a second.</summary>
    public bool RankNext { get; init; } = true;
}
