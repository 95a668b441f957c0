namespace Ohmstead.Electrical.Diagnosis;

/// <summary>
/// How widely the search for sets of faults looks. Each default says why. What bounds it is counted, never timed: the same readings
/// give the same answer on any machine, however busy.
/// </summary>
public sealed record DiagnosisOptions
{
    /// <summary>Sets of faults whose neighbourhood is searched: enough that the remaining ones carry little, see docs/diagnosis.md.</summary>
    public int MostExpanded { get; init; } = 30;

    /// <summary>
    /// Work of the search after which no further set is expanded: readings solved times the elements of the sheet, one with a
    /// conducting rectifier ten times, which is what they cost (docs/performance.md). More of it moves the scores in
    /// docs/diagnosis.md by less than their noise; about 0.3 s on two cores.
    /// </summary>
    public long MostWork { get; init; } = 6_500_000;

    /// <summary>Sets expanded whatever they cost: with fewer an answer is worth less than the wait.</summary>
    public int LeastExpanded { get; init; } = 4;

    /// <summary>Sets expanded before the margin counts: next to the sound unit every set is badly judged.</summary>
    public int YoungExpanded { get; init; } = 8;

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
    public double WrongReadingChance { get; init; } = 0.02;

    /// <summary>The bench, the meter and the sheet are taken as they are noted: for comparison with what assumes it.</summary>
    public bool IsBenchAsNoted { get; init; }

    /// <summary>
    /// The last guard, far off: true when it must come to an end at once, asked everywhere. The clock belongs to the caller. What was
    /// not looked at by then keeps its own chance, and the answer says that it is not finished (<see cref="SearchStop.TimeUp"/>). What
    /// the sound unit shows, and how that varies, is always worked out: without it no answer would be honest.
    /// </summary>
    public Func<bool> IsOverdue { get; init; } = () => false;

    /// <summary>Told the share done [0..1] and the best set's number of faults.</summary>
    public Action<double>? Progress { get; init; }

    /// <summary>
    /// Told what is likely so far, each time twice as many sets were expanded, from eight on, until the search is done: counted and not timed,
    /// so the same readings show the same on the way.
    /// </summary>
    public Action<EarlyAnswer>? Early { get; init; }

    /// <summary>Stops the search early; what was found so far is returned, and is not finished either.</summary>
    public CancellationToken Cancellation { get; init; }

    /// <summary>Threads used; the answer does not depend on it.</summary>
    public int Threads { get; init; } = 2;

    /// <summary>Untaken readings are ranked when true; costs about a tenth of a second.</summary>
    public bool RankNext { get; init; } = true;
}
