using System.Collections.Immutable;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>
/// What a kind of unit is: its circuit, what can be read on it, what eyes and hands can tell, and how it comes apart.
/// A sheet exists only when nothing is wrong with it (<see cref="TypeSheetFile.Read"/>), so nothing checks it again.
/// </summary>
/// <param name="Id">Identifier, also used in unit and readings files.</param>
/// <param name="Title">One line for people.</param>
/// <param name="SupplyVolts">Nominal mains voltage [V RMS].</param>
/// <param name="SupplyHertz">Mains frequency [Hz].</param>
public sealed record TypeSheet(
    string Id,
    string Title,
    double SupplyVolts,
    double SupplyHertz,
    ImmutableArray<Core> Cores,
    ImmutableArray<Control> Controls,
    ImmutableArray<Element> Elements,
    ImmutableArray<ImmutableArray<string>> Near,
    ImmutableArray<ReadingSpec> Readings,
    ImmutableArray<Observation> Observations,
    ImmutableArray<TakeApartStep> TakeApart
)
{
    /// <summary>Input watts printed on the plate [W]; 0 where the sheet does not say.</summary>
    public double InputWatts { get; init; }

    /// <summary>Watts that it gives for hours [W]; 0 where the sheet does not say.</summary>
    public double UsableWatts { get; init; }

    /// <summary>The marks of the readings that a drafted sheet was drafted from.</summary>
    public ImmutableArray<string> DraftedFrom { get; init; } = [];

    /// <summary>The file as read, unknown fields included; what is written back starts from it.</summary>
    internal AsRead AsRead { get; init; } = AsRead.Nothing;

    /// <summary>Angular supply frequency [rad/s].</summary>
    public double OmegaRadPerSecond => 2 * Math.PI * SupplyHertz;

    /// <summary>
    /// What elements, sliders, their ends, terminals, controls and positions are called in a sentence, by id; an end is
    /// <c>element.from</c>, <c>element.to</c> or <c>element.tap-1</c>, a position <c>control=position</c>.
    /// </summary>
    public ImmutableDictionary<string, string> Titles { get; init; } = NoTitles;

    /// <summary>Faults that several parts have together.</summary>
    public ImmutableArray<SharedFault> SharedFaults { get; init; } = [];

    /// <summary>No titles.</summary>
    internal static ImmutableDictionary<string, string> NoTitles { get; } =
        ImmutableDictionary.Create<string, string>(StringComparer.Ordinal);

    /// <summary>The windings on cores, in sheet order.</summary>
    public IEnumerable<Winding> Windings => Elements.OfType<Winding>().Where(w => w.IsOnCore);

    /// <summary>The contacts that slide, in sheet order.</summary>
    public IEnumerable<Slider> Sliders => Elements.OfType<Winding>().SelectMany(w => w.Sliders);

    /// <summary>The ids of elements and sliders.</summary>
    public IEnumerable<string> PartIds => Elements.SelectMany(e => (e is Winding w ? w.Sliders.Select(s => s.Id) : []).Prepend(e.Id));

    /// <summary>What an element or slider is; null for any other id.</summary>
    public ElementKind? KindOf(string id) =>
        Elements.FirstOrDefault(e => e.Id == id)?.Kind ?? (Sliders.Any(s => s.Id == id) ? ElementKind.Slider : null);

    /// <summary>The fault with this id that parts share, or null.</summary>
    public SharedFault? FindShared(string id) => SharedFaults.FirstOrDefault(f => f.Id == id);

    /// <summary>The parts that a fault named by this id is of: those that share it, or the one part itself.</summary>
    public ImmutableArray<string> PartsOf(string id) => FindShared(id)?.Elements ?? [id];

    /// <summary>The reading with this id, or null.</summary>
    public ReadingSpec? FindReading(string id) => Readings.FirstOrDefault(r => r.Id == id);

    /// <summary>The ids of the readings on which one rests, directly or through others.</summary>
    public IReadOnlySet<string> NeedsOf(ReadingSpec reading)
    {
        var needs = new HashSet<string>(StringComparer.Ordinal);
        var open = new Stack<ReadingSpec>([reading]);
        while (open.TryPop(out var next))
            foreach (var id in next.Needs)
                if (needs.Add(id) && FindReading(id) is { } need)
                    open.Push(need);
        return needs;
    }
}

/// <summary>
/// A magnetic core. Its magnetising current is either a table (RMS current against RMS induced voltage of the reference
/// winding, joined by straight lines, the last slope carried on) or a fixed inductance.
/// </summary>
/// <param name="LossOhms">Core loss as a resistance across the induced voltage of the reference winding [Ω].</param>
/// <param name="Excitation">Points (V, A), rising, from (0, 0); empty when <paramref name="MagnetisingHenries"/> stands in.</param>
/// <param name="MagnetisingHenries">Fixed magnetising inductance seen at the reference winding [H]; 0 when unused.</param>
public sealed record Core(
    string Id,
    string ReferenceWinding,
    double LossOhms,
    ImmutableArray<(double Volts, double Amps)> Excitation,
    double MagnetisingHenries,
    SpreadOverrides Spread
)
{
    /// <summary>How much of each spread is doubt about the kind, on a drafted sheet.</summary>
    public SpreadOverrides KindError { get; init; } = SpreadOverrides.None;

    /// <summary>How far a number differs among sound cores of a kind [relative standard deviation]: common practice, no source.</summary>
    internal static double UsualSpread(string field) =>
        field switch
        {
            "lossOhms" => 0.10,
            "excitation" or "magnetisingHenries" => 0.12,
            _ => 0,
        };
}

/// <summary>A control: a throttle from 0 to 1, or a selector with named positions.</summary>
public sealed record Control(string Id, bool IsThrottle, ImmutableArray<string> Positions, string Rest);

/// <summary>An observation by eye, hand or the owner: the chance of "yes" with each fault present, and with none of them.</summary>
/// <param name="Given">Chance of "yes" [0..1] for a fault written <c>element:mode</c>.</param>
/// <param name="Otherwise">Chance of "yes" [0..1] with none of these faults.</param>
public sealed record Observation(string Id, string Title, ImmutableArray<(string Fault, double Chance)> Given, double Otherwise);

/// <summary>One step of taking the unit apart.</summary>
/// <param name="After">Steps that must all be done first.</param>
/// <param name="AfterAny">Groups of steps; when not empty, all steps of at least one group must be done first.</param>
/// <param name="BreakPercent">Chance that something breaks [%].</param>
/// <param name="Price">Price of what breaks, in the shop's money.</param>
/// <param name="Lifts">Elements that this step disconnects.</param>
/// <param name="Part">What comes off, as the shop's list of parts names it; empty where that is nothing to renew.</param>
/// <param name="Cup">Cup that its small pieces go into; 0 for none.</param>
public sealed record TakeApartStep(
    string Id,
    string Title,
    ImmutableArray<string> After,
    ImmutableArray<ImmutableArray<string>> AfterAny,
    double MinutesOut,
    double MinutesIn,
    double BreakPercent,
    double Price,
    ImmutableArray<string> Lifts,
    string Part,
    int Cup
)
{
    /// <summary>What it is done with, in words: "flat screwdriver, 4 mm". May be empty.</summary>
    public string Tool { get; init; } = "";

    /// <summary>How it goes back without harm, in words. May be empty.</summary>
    public string Trick { get; init; } = "";
}

/// <summary>Relative standard deviations that a sheet sets itself, by the JSON name of the quantity.</summary>
public sealed record SpreadOverrides(ImmutableDictionary<string, double> ByName)
{
    /// <summary>No override.</summary>
    public static SpreadOverrides None { get; } = new(ImmutableDictionary<string, double>.Empty);

    /// <summary>The override for <paramref name="name"/>, or <paramref name="usual"/>.</summary>
    public double Of(string name, double usual) => ByName.TryGetValue(name, out var own) ? own : usual;
}
