using System.Collections.Immutable;

namespace Ohmstead.Workshop.Asking;

/// <summary>
/// What a person said of a unit that no type fits, as it was typed or chosen: nothing is lost where it makes no sense yet. Empty is not
/// answered; <see cref="Unknown"/> is "I don't know".
/// </summary>
public sealed record KindAnswers
{
    /// <summary>"I don't know".</summary>
    public const string Unknown = "unknown";

    /// <summary>"There is none".</summary>
    public const string None = "none";

    /// <summary>"Not the same on each throttle": what each has is asked one by one.</summary>
    public const string Differ = "differ";

    /// <summary>Most throttles on one unit.</summary>
    public const int MostThrottles = 4;

    /// <summary>What the person calls the type; empty for a name made of the answers.</summary>
    public string Title { get; init; } = "";

    /// <summary>Mains volts on the plate.</summary>
    public string Volts { get; init; } = "";

    /// <summary>Watts on the plate.</summary>
    public string Watts { get; init; } = "";

    /// <summary>Hertz on the plate.</summary>
    public string Hertz { get; init; } = "";

    /// <summary>How many throttles: "0" to "4".</summary>
    public string Count { get; init; } = "";

    /// <summary>What a throttle runs on: roller, shoe, steps, rheostat; as all that is said of throttles, or <see cref="Differ"/>.</summary>
    public string Runs { get; init; } = "";

    /// <summary>What comes out behind a throttle: ac, bridge, half, or dc where nobody looked.</summary>
    public string Output { get; init; } = "";

    /// <summary>What the rectifier is made of: disc, selenium, silicon.</summary>
    public string Cell { get; init; } = "";

    /// <summary>What was said of each throttle; more than there are, where one was taken back.</summary>
    public ImmutableArray<ThrottleAnswer> Throttles { get; init; } = [];

    /// <summary>Whether there are posts with fixed volts: none or some.</summary>
    public string Fixed { get; init; } = "";

    /// <summary>The posts with fixed volts.</summary>
    public ImmutableArray<PostAnswer> Posts { get; init; } = [];

    /// <summary>Posts that were named on the unit before its type was asked for.</summary>
    public ImmutableArray<string> Named { get; init; } = [];

    /// <summary>A lever that adds volts: none or each.</summary>
    public string Range { get; init; } = "";

    /// <summary>Volts that it adds.</summary>
    public string RangeVolts { get; init; } = "";

    /// <summary>Whistle levers: none, each or shared.</summary>
    public string Whistle { get; init; } = "";

    /// <summary>Whose volts a whistle adds: own, winding or none.</summary>
    public string WhistleFrom { get; init; } = "";

    /// <summary>Volts that it adds.</summary>
    public string WhistleVolts { get; init; } = "";

    /// <summary>What the direction control does: none, interrupts, rotary, reverses, or some where nobody looked.</summary>
    public string Direction { get; init; } = "";

    /// <summary>Where the breaker is: none, common, throttle, primary or a post.</summary>
    public string Breaker { get; init; } = "";

    /// <summary>Amps that are printed on it.</summary>
    public string BreakerAmps { get; init; } = "";

    /// <summary>Where the pilot lamp burns: none, own, main, post or breaker.</summary>
    public string Lamp { get; init; } = "";

    /// <summary>The post that it burns between and the common one.</summary>
    public string LampPost { get; init; } = "";

    /// <summary>Volts of it.</summary>
    public string LampVolts { get; init; } = "";

    /// <summary>How many throttles are asked about; one where nobody knows.</summary>
    public int ThrottleCount =>
        Count == Unknown ? 1
        : Count.Length == 1 && char.IsAsciiDigit(Count[0]) ? Math.Min(Count[0] - '0', MostThrottles)
        : 0;

    /// <summary>True where DC comes out behind every throttle.</summary>
    public bool IsDirect => ThrottleCount > 0 && Enumerable.Range(0, ThrottleCount).All(IsDirectAt);

    /// <summary>True where DC comes out behind a throttle.</summary>
    public bool IsDirectAt(int n) => At(n).Output is "bridge" or "half" or "dc";

    /// <summary>The throttles that DC comes out behind.</summary>
    internal IEnumerable<int> DirectThrottles => Enumerable.Range(0, ThrottleCount).Where(IsDirectAt);

    /// <summary>The throttles that have a whistle lever, or a share in one: AC only.</summary>
    internal IEnumerable<int> WhistleThrottles =>
        Enumerable.Range(0, ThrottleCount).Where(n => !IsDirectAt(n) && At(n).Whistle is "each" or "shared");

    /// <summary>What a throttle has, counted from 0: its own choices where the throttles differ, else those of all.</summary>
    public ThrottleAnswer At(int n)
    {
        var own = Throttle(n);
        string Of(string all, string one) => all == Differ ? one : all;
        return own with
        {
            Runs = Of(Runs, own.Runs),
            Output = Of(Output, own.Output),
            Range = Of(Range, own.Range),
            RangeVolts = Range == Differ ? own.RangeVolts : RangeVolts,
            Cell = Of(Cell, own.Cell),
            Whistle = Of(Whistle, own.Whistle),
            WhistleFrom = Of(WhistleFrom, own.WhistleFrom),
            WhistleVolts = WhistleFrom == Differ ? own.WhistleVolts : WhistleVolts,
            Direction = Of(Direction, own.Direction),
        };
    }

    /// <summary>The posts with fixed volts, so far as something was said of them.</summary>
    public IEnumerable<PostAnswer> FixedPosts => Fixed == None ? [] : Posts.Where(p => !p.IsEmpty);

    /// <summary>The post that the other wire of the first AC throttle is on; null where there is none.</summary>
    public string? FirstReturn =>
        Enumerable.Range(0, ThrottleCount).Where(n => !IsDirectAt(n)).Select(n => Throttle(n).Return).FirstOrDefault();

    /// <summary>The answers as if a throttle were the only one, with what it has.</summary>
    public KindAnswers Alone(int n)
    {
        var at = At(n);
        return this with
        {
            Count = "1",
            Throttles = [at],
            Runs = at.Runs,
            Output = at.Output,
            Cell = at.Cell,
            Range = at.Range,
            RangeVolts = at.RangeVolts,
            Whistle = at.Whistle,
            WhistleFrom = at.WhistleFrom,
            WhistleVolts = at.WhistleVolts,
            Direction = at.Direction,
        };
    }

    /// <summary>What was said of a throttle, counted from 0; an empty answer where nothing was. A second one is as the first until it is asked for.</summary>
    public ThrottleAnswer Throttle(int n) => n < Throttles.Length ? Throttles[n] : new ThrottleAnswer();

    /// <summary>With another answer for a throttle.</summary>
    public KindAnswers With(int n, ThrottleAnswer answer)
    {
        var all = Throttles;
        while (all.Length <= n)
            all = all.Add(new ThrottleAnswer());
        return this with { Throttles = all.SetItem(n, answer) };
    }
}

/// <summary>What was said of one throttle.</summary>
public sealed record ThrottleAnswer
{
    /// <summary>The post it feeds.</summary>
    public string Post { get; init; } = "";

    /// <summary>The post that the other wire to the track is on.</summary>
    public string Return { get; init; } = "";

    /// <summary>No-load volts at its lowest.</summary>
    public string Low { get; init; } = "";

    /// <summary>No-load volts at full.</summary>
    public string Full { get; init; } = "";

    /// <summary>Volts of each step, lowest first, or how many steps.</summary>
    public string Steps { get; init; } = "";

    /// <summary>Ohms of the whole resistance wire.</summary>
    public string Ohms { get; init; } = "";

    /// <summary>What it runs on, where the throttles differ.</summary>
    public string Runs { get; init; } = "";

    /// <summary>What comes out behind it, where they differ.</summary>
    public string Output { get; init; } = "";

    /// <summary>What its rectifier is made of, where they differ.</summary>
    public string Cell { get; init; } = "";

    /// <summary>Its range lever, where they differ.</summary>
    public string Range { get; init; } = "";

    /// <summary>Volts that its range lever adds, where they differ.</summary>
    public string RangeVolts { get; init; } = "";

    /// <summary>Its whistle lever, where they differ.</summary>
    public string Whistle { get; init; } = "";

    /// <summary>Whose volts its whistle adds, where they differ.</summary>
    public string WhistleFrom { get; init; } = "";

    /// <summary>Volts that its whistle adds, where they differ.</summary>
    public string WhistleVolts { get; init; } = "";

    /// <summary>What changes its direction, where they differ.</summary>
    public string Direction { get; init; } = "";

    /// <summary>True where nothing was said of its posts and volts.</summary>
    public bool IsUnsaid => (Post + Return + Low + Full + Steps + Ohms).Length == 0;
}

/// <summary>What was said of a post with fixed volts.</summary>
public sealed record PostAnswer
{
    /// <summary>Its mark.</summary>
    public string Post { get; init; } = "";

    /// <summary>The post that its volts are counted from.</summary>
    public string Return { get; init; } = "";

    /// <summary>No-load volts.</summary>
    public string Volts { get; init; } = "";

    /// <summary>The post that feeds it through a rectifier, where it gives DC; empty for AC.</summary>
    public string FedFrom { get; init; } = "";

    /// <summary>True where nothing was said.</summary>
    public bool IsEmpty => Post.Trim().Length + Volts.Trim().Length + FedFrom.Trim().Length == 0;
}
