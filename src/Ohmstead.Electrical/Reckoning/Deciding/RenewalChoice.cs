using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>now-or-later</c>: which parts to replace while they are in reach, against opening the unit again when they fail. Parts that
/// lie on one way share it, so that what pays together is found over all sets of them (docs/methods/deciding.md).
/// </summary>
/// <param name="Open">Steps that are off already.</param>
/// <param name="RatePerHour">What an hour at the bench costs.</param>
/// <param name="ComeBackCost">What it costs that a unit comes back at all.</param>
public sealed record RenewalChoice(
    ImmutableArray<TakeApartStep> Steps,
    ImmutableArray<string> Open,
    decimal RatePerHour,
    decimal ComeBackCost,
    ImmutableArray<RenewablePart> Parts
) : Question
{
    private const int MostParts = 8;

    /// <summary>Reads its fields.</summary>
    public static RenewalChoice Read(QuestionFields fields)
    {
        var steps = fields.NeededSheet()?.TakeApart ?? [];
        ImmutableArray<string> ids = [.. steps.Select(s => s.Id)];
        var open = ReadOpen(fields, steps);
        var taken = new HashSet<string>(StringComparer.Ordinal);
        return new(
            steps,
            open,
            fields.Money("ratePerHour", 50),
            fields.Money("comeBackCost", 20),
            fields.List("parts", f => RenewablePart.Read(f, ids, taken), most: MostParts)
        );
    }

    private static ImmutableArray<string> ReadOpen(QuestionFields fields, ImmutableArray<TakeApartStep> steps)
    {
        var open = ImmutableArray.CreateBuilder<string>();
        var places = new Dictionary<string, QuestionFields>(StringComparer.Ordinal);
        foreach (var place in fields.Places("open", isRequired: false))
        {
            var id = place.AsWord();
            if (steps.Any(s => s.Id == id))
            {
                open.Add(id);
                places.TryAdd(id, place);
            }
            else if (id.Length > 0 && fields.Sheet is not null)
                place.Report($"\"{id}\" is no step of the sheet", "name take-apart steps that are off");
        }
        foreach (var stuck in ReachCosts.NotOff(steps, open))
            places[stuck].Report($"\"{stuck}\" could not be off yet", "name what has to come off before it too");
        return open.ToImmutable();
    }

    /// <inheritdoc/>
    public override RenewalAnswer Answer()
    {
        ImmutableArray<string> steps = [.. Parts.Select(p => p.Step)];
        var rate = (double)RatePerHour;
        var open = new ReachCosts(Steps, steps, rate, Open.ToHashSet(StringComparer.Ordinal));
        var closed = Open.IsEmpty ? open : new ReachCosts(Steps, steps, rate, ImmutableHashSet<string>.Empty);
        ImmutableArray<RenewalOfPart> parts =
        [
            .. Parts.Select(p =>
            {
                var (reach, fit) = (open.To([p.Step]), p.FitCost(RatePerHour));
                return RenewalOfPart.Of(
                    p,
                    reach,
                    new NowOrLater(reach + fit, closed.To([p.Step]) + fit + (double)ComeBackCost, p.FailPercent),
                    rate
                );
            }),
        ];
        var (chosen, cost) = open.Choose([.. Parts.Zip(parts, (p, costs) => new PartChoice(p.Step, p.FitCost(RatePerHour), costs.Later))]);
        var together = new RenewalTogether([.. chosen.Order(StringComparer.Ordinal)], cost, parts.Sum(p => p.Later));
        return new RenewalAnswer(parts, together)
        {
            Words =
            [
                together.Now.IsEmpty
                    ? "Leave them all. Replacing any of them now costs more than it saves."
                    : "Replace these together while the unit is open.",
                "The chances that parts fail are common practice, no source.",
            ],
            Outside =
            [
                "A part replaced now is taken not to fail.",
                "Each part fails by itself, and the unit is opened for it alone.",
                "The set that pays together leaves tests out.",
                .. Reasons.If(
                    "The sheet has too many steps to prove the cheapest way. These costs are the least found.",
                    !(open.IsProved && closed.IsProved)
                ),
            ],
        };
    }
}

/// <summary>A part that may be replaced now.</summary>
/// <param name="Step">The take-apart step that brings it out.</param>
/// <param name="WorkMinutes">To fit the new one.</param>
/// <param name="FailPercent">Chance that the owner brings the unit back for it before it would be opened anyway.</param>
/// <param name="Test">A test that may be made first, or null.</param>
public sealed record RenewablePart(string Step, decimal Price, double WorkMinutes, double FailPercent, PartTest? Test)
{
    internal static RenewablePart Read(QuestionFields fields, ImmutableArray<string> steps, HashSet<string> taken)
    {
        // Without a sheet that is said once, and not of every step.
        var step = fields.Sheet is null ? fields.Word("step") : fields.KnownId("step", steps, "step of the sheet");
        if (step.Length > 0 && !taken.Add(step))
            fields.Report("step", $"\"{step}\" has a part already", "each part is at a step of its own");
        return new(
            step,
            fields.Money("price"),
            fields.Number("workMinutes", NumberRange.NotNegative, 0),
            fields.Number("failPercent", NumberRange.Percent),
            fields.Part("test") is { } test ? PartTest.Read(test) : null
        );
    }

    /// <summary>The part and the work of fitting it, the way to it left out.</summary>
    internal double FitCost(decimal ratePerHour) => (double)Price + (WorkMinutes * (double)ratePerHour / 60);
}

/// <summary>A test of a part: how long, and how often it is right.</summary>
/// <param name="DetectsPercent">Of parts that would fail.</param>
/// <param name="FalsePercent">Of parts that would not: it cries out all the same.</param>
/// <param name="NeedsPart">It is made on the part itself, which has to be reached; else it is made as the unit lies there.</param>
public sealed record PartTest(double Minutes, double DetectsPercent, double FalsePercent, bool NeedsPart)
{
    internal static PartTest Read(QuestionFields fields) =>
        new(
            fields.Number("minutes", NumberRange.NotNegative),
            fields.Number("detectsPercent", NumberRange.Percent),
            fields.Number("falsePercent", NumberRange.Percent),
            fields.OneOf("access", ["here", "part"]) == "part"
        );
}

/// <summary>What <c>now-or-later</c> answers.</summary>
public sealed record RenewalAnswer(ImmutableArray<RenewalOfPart> Parts, RenewalTogether Together) : Answer;

/// <summary>One part by itself, expected costs in money.</summary>
/// <param name="Now">The rest of the way, the part and its work.</param>
/// <param name="OnFailure">The whole way, the part, its work and the come-back, when it fails.</param>
/// <param name="Later">What leaving it costs on average.</param>
/// <param name="BreakEvenPercent">Above this chance of failing, now is cheaper; may exceed 100; null where failing costs nothing.</param>
/// <param name="Test">Testing first and doing what the test says; null where there is no test, as the two after it.</param>
/// <param name="AlarmPercent">How often the test cries out.</param>
/// <param name="FailPercentIfQuiet">Chance of failing after a quiet test; null where it is never quiet.</param>
/// <param name="Best">now, later or test.</param>
public sealed record RenewalOfPart(
    string Step,
    double Now,
    double OnFailure,
    double Later,
    double? BreakEvenPercent,
    double? Test,
    double? AlarmPercent,
    double? FailPercentIfQuiet,
    string Best
)
{
    internal static RenewalOfPart Of(RenewablePart part, double reach, NowOrLater costs, double ratePerHour)
    {
        var (now, later) = (costs.Now, costs.Later);
        double? breakEven = costs.OnFailure > 0 ? costs.BreakEvenPercent : null;
        var untested = now <= later ? "now" : "later";
        if (part.Test is not { } t)
            return new(part.Step, now, costs.OnFailure, later, breakEven, null, null, null, untested);
        var (p, detects) = (part.FailPercent / 100, t.DetectsPercent / 100);
        var alarm = (p * detects) + ((1 - p) * t.FalsePercent / 100);
        var missed = p * (1 - detects);
        var paid = t.NeedsPart ? reach : 0;
        var test = (t.Minutes * ratePerHour / 60) + paid + (alarm * (now - paid)) + (missed * costs.OnFailure);
        return new(
            part.Step,
            now,
            costs.OnFailure,
            later,
            breakEven,
            test,
            100 * alarm,
            alarm < 1 ? 100 * missed / (1 - alarm) : null,
            test < Math.Min(now, later) ? "test" : untested
        );
    }
}

/// <summary>The set of parts to replace now.</summary>
/// <param name="Now">Their steps, sorted.</param>
/// <param name="ExpectedCost">The way to all of them, the parts and their work, and the rest left.</param>
/// <param name="AllLater">Leaving every one of them.</param>
public sealed record RenewalTogether(ImmutableArray<string> Now, double ExpectedCost, double AllLater);
