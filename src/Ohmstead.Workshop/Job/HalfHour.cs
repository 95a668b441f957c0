namespace Ohmstead.Workshop.Job;

/// <summary>What the next half hour can do.</summary>
public static class HalfHour
{
    /// <summary>Longer than this does not fit [min].</summary>
    public const double Minutes = 30;

    /// <summary>Units with something to do that fits: what is half done first, then what was touched last.</summary>
    public static IEnumerable<UnitCard> Order(IEnumerable<UnitCard> cards) =>
        cards.Where(c => !c.IsHandedBack).OrderBy(c => PlaceOf(c.Next)).ThenByDescending(c => c.LastAt);

    /// <summary>Where a unit with this to do stands among the others, 0 the first.</summary>
    public static int PlaceOf(NextThing next) =>
        next.Minutes > Minutes
            ? 9
            : next.Action switch
            {
                NextAction.Repair or NextAction.CheckWiring or NextAction.TakeApart or NextAction.PutBack => 0,
                NextAction.TakeReading => 1,
                NextAction.JudgeFindings => 2,
                NextAction.MakePaper or NextAction.Return => 3,
                NextAction.LookOver => 4,
                _ => 5,
            };
}
