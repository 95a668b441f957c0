using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Workshop.Drawers;

namespace Ohmstead.Workshop.Plans;

/// <summary>A line of the plan of a unit: something to be done, or that was done.</summary>
/// <param name="Kind">What sort of line it is.</param>
/// <param name="Words">What is done: "Cord: replace".</param>
/// <param name="Under">Why, or how sure; may be empty.</param>
/// <param name="Steps">What it is made of, each with its minutes; none where it was done.</param>
/// <param name="Parts">What is fitted.</param>
public sealed record PlanLine(PlanLineKind Kind, string Words, string Under, ImmutableArray<PlanStep> Steps, ImmutableArray<PlanPart> Parts)
{
    /// <summary>The part, reading or step that it is about; empty for none.</summary>
    public string About { get; init; } = "";

    /// <summary>Fault mode that it is about; empty for none.</summary>
    public string Mode { get; init; } = "";

    /// <summary>The steps or parts in it by name, where it stands for several.</summary>
    public ImmutableArray<string> Names { get; init; } = [];

    /// <summary>Where the job may end once this was done; null for none.</summary>
    public PlanStop? Stop { get; init; }

    /// <summary>What it took, of a line that was done [min]; null where the log does not say.</summary>
    public double? TookMinutes { get; init; }

    /// <summary>Half of such lines take less, where they are needed [min].</summary>
    public double Minutes => Steps.Sum(s => s.Law.MedianMinutes);

    /// <summary>True for a line that was done.</summary>
    public bool IsDone => Kind is PlanLineKind.Done;
}

/// <summary>Sorts of lines.</summary>
public enum PlanLineKind
{
    /// <summary>It was done.</summary>
    Done,

    /// <summary>Steps come off.</summary>
    TakeApart,

    /// <summary>A part is mended.</summary>
    Work,

    /// <summary>A reading that settles what is to be done.</summary>
    Reading,

    /// <summary>Looks alone.</summary>
    Looks,

    /// <summary>Steps go back.</summary>
    PutTogether,

    /// <summary>Checks, then power.</summary>
    Check,
}

/// <summary>Work of which minutes are known or believed.</summary>
/// <param name="Id">Unique in the plan.</param>
/// <param name="Key">What counts as the same work (<see cref="WorkKey"/>).</param>
/// <param name="UsualMinutes">What is believed before anything was logged [min].</param>
/// <param name="Records">What earlier units took [min].</param>
/// <param name="Percent">Chance that it is needed [%].</param>
public sealed record PlanStep(string Id, string Key, double UsualMinutes, ImmutableArray<double> Records, double Percent)
{
    /// <summary>As the reckoning takes it: the belief has its usual spread and worth.</summary>
    public QuotedStep Quoted => new(Id, UsualMinutes, QuotedStep.UsualSpread, QuotedStep.UsualWorth, Records, Percent);

    /// <summary>The law of its minutes.</summary>
    public MinutesLaw Law => Quoted.Minutes();
}

/// <summary>Something that is fitted.</summary>
/// <param name="Name">What it is, in words.</param>
/// <param name="Percent">Chance that it is needed [%].</param>
public sealed record PlanPart(string Name, decimal Price, double Percent)
{
    /// <summary>What the drawer says of it; null where it was not asked, or has no bins.</summary>
    public AtHand? Hand { get; init; }

    /// <summary>What speaks against fitting the one that is there; empty for nothing.</summary>
    public string Caution { get; init; } = "";
}

/// <summary>A point at which the job may end.</summary>
/// <param name="Words">When, in words: "insulation stays under 2 MΩ".</param>
/// <param name="Percent">Of the jobs that come so far [%].</param>
/// <param name="Fee">What is charged then.</param>
public sealed record PlanStop(string Words, double Percent, decimal Fee);
