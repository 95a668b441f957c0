using System.Collections.Immutable;

namespace Ohmstead.Electrical.Outlines;

/// <summary>
/// What can be seen of a kind of unit: its plate and its blocks, each of a few parts in their usual order. Every word is known here;
/// an outline with unknown words is several of these (<see cref="OutlineFile"/>).
/// </summary>
/// <param name="Watts">Input as the plate prints it [W].</param>
/// <param name="LineTaps">Line volts that a switch chooses between, rising [V]; empty for one.</param>
/// <param name="LeftOut">Fields that were left out and have a usual value, by place.</param>
public sealed record Outline(
    string Id,
    string Title,
    double Volts,
    double Hertz,
    Figure Watts,
    ImmutableArray<double> LineTaps,
    ImmutableArray<WindingBlock> Windings,
    ImmutableArray<ThrottleBlock> Throttles,
    ImmutableArray<RangeBlock> Ranges,
    ImmutableArray<WhistleBlock> Whistles,
    ImmutableArray<DirectionBlock> Directions,
    ImmutableArray<BreakerBlock> Breakers,
    ImmutableArray<PilotBlock> Pilots,
    ImmutableArray<RectifierBlock> Rectifiers,
    ImmutableArray<BondBlock> Bonds,
    ImmutableArray<string> LeftOut
)
{
    /// <summary>Relative standard deviation of the plate's volts, where they are known to lie between two.</summary>
    public double VoltsDoubt { get; init; }

    /// <summary>The posts at which windings start, each once.</summary>
    public IEnumerable<string> StartPosts => Windings.Select(w => w.From).Where(p => p.Length > 0).Distinct(StringComparer.Ordinal);

    /// <summary>Posts of windings and behind rectifiers, not of throttles.</summary>
    public IEnumerable<string> FixedPosts =>
        StartPosts
            .Concat(Windings.SelectMany(w => w.Posts.Select(p => p.Post)))
            .Concat(PostRectifiers.Select(r => r.Post))
            .Distinct(StringComparer.Ordinal);

    /// <summary>The posts of a throttle: one, or two behind a rectifier.</summary>
    public IEnumerable<string> PostsOf(ThrottleBlock t) => RectifierOf(t) is null ? [t.Id] : [$"{t.Id}-a", $"{t.Id}-b"];

    /// <summary>Every post, fixed ones first.</summary>
    public IEnumerable<string> Posts => FixedPosts.Concat(Throttles.SelectMany(PostsOf));

    /// <summary>Rectifiers that have a post of their own.</summary>
    public IEnumerable<RectifierBlock> PostRectifiers => Rectifiers.Where(r => r.Post.Length > 0);

    /// <summary>The rectifier that a throttle feeds, or null.</summary>
    public RectifierBlock? RectifierOf(ThrottleBlock t) => Rectifiers.FirstOrDefault(r => r.Post.Length == 0 && r.Throttle == t.Id);

    /// <summary>The range lever of a throttle, or null.</summary>
    public RangeBlock? RangeOf(ThrottleBlock t) => Ranges.FirstOrDefault(r => r.Throttle == t.Id);

    /// <summary>The whistle of a throttle, or null.</summary>
    public WhistleBlock? WhistleOf(ThrottleBlock t) => Whistles.FirstOrDefault(w => w.Throttles.Contains(t.Id, StringComparer.Ordinal));

    /// <summary>The direction control of a throttle, or null.</summary>
    public DirectionBlock? DirectionOf(ThrottleBlock t) => Directions.FirstOrDefault(d => d.Throttle == t.Id);

    /// <summary>The breaker at a place, or null.</summary>
    public BreakerBlock? BreakerIn(string place) => Breakers.FirstOrDefault(b => b.In == place);

    /// <summary>The winding that a throttle is on.</summary>
    public WindingBlock WindingOf(ThrottleBlock t) => Windings.First(w => w.Id == t.On);

    /// <summary>What comes out for hours: common practice, no source [W].</summary>
    public double UsableWatts => 0.72 * Watts.Value;
}

/// <summary>A winding and the posts on its taps.</summary>
/// <param name="Place">Its place among the blocks.</param>
/// <param name="From">The post of its start; empty where both ends stay inside.</param>
/// <param name="Volts">Of the whole winding, where it is given [V].</param>
/// <param name="Watts">Its share of the plate's, where it is known [W].</param>
/// <param name="HasWatts">The outline has something to say of its watts, if only that nobody knows them.</param>
public sealed record WindingBlock(
    int Place,
    string Id,
    string From,
    ImmutableArray<PostVolts> Posts,
    Figure? Volts,
    Figure? Watts,
    bool HasWatts
);

/// <summary>A post and its no-load volts from the winding's start [V].</summary>
public sealed record PostVolts(string Post, Figure Volts);

/// <summary>How a throttle takes its volts.</summary>
public enum ThrottleKind
{
    /// <summary>A roller on bare turns.</summary>
    Roller,

    /// <summary>A shoe on bare turns.</summary>
    Shoe,

    /// <summary>Taps, one after another.</summary>
    Steps,

    /// <summary>A brush on a resistance wire.</summary>
    Rheostat,
}

/// <summary>A throttle. Volts: lowest and highest, or every step; none of a rheostat, which has the ohms of its whole wire.</summary>
public sealed record ThrottleBlock(int Place, string Id, string On, ThrottleKind Kind, ImmutableArray<Figure> Volts, Figure? Ohms)
{
    /// <summary>True where it moves along the winding.</summary>
    public bool Slides => Kind is ThrottleKind.Roller or ThrottleKind.Shoe;
}

/// <summary>A lever that adds volts to a throttle.</summary>
public sealed record RangeBlock(int Place, string Throttle, Figure Boost);

/// <summary>A whistle lever of one throttle or of several.</summary>
/// <param name="FromWinding">The boost is taken further on from the throttle's winding, not from a winding of its own.</param>
public sealed record WhistleBlock(int Place, ImmutableArray<string> Throttles, Figure Boost, bool FromWinding, int Steps, string Cell)
{
    /// <summary>One lever for several throttles.</summary>
    public bool IsShared => Throttles.Length > 1;

    /// <summary>What its parts are named after.</summary>
    public string Suffix => IsShared ? "" : $"-{Throttles[0]}";

    /// <summary>True where a winding of its own gives the boost.</summary>
    public bool HasOwnWinding => !FromWinding && Boost.Value > 0;
}

/// <summary>What a direction control does.</summary>
public enum DirectionKind
{
    /// <summary>A button that interrupts.</summary>
    Interrupts,

    /// <summary>A lever that interrupts on its way from one contact to the other.</summary>
    Rotary,

    /// <summary>A switch that exchanges plus and minus.</summary>
    Reverses,
}

/// <summary>The direction control of a throttle.</summary>
public sealed record DirectionBlock(int Place, string Throttle, DirectionKind Kind);

/// <summary>A breaker: in the common post, behind each throttle, in the primary or before a fixed post.</summary>
/// <param name="Amps">What it is rated for; null where nobody knows.</param>
public sealed record BreakerBlock(int Place, string In, Figure? Amps);

/// <summary>A pilot lamp between two posts, across a winding, or across the breaker.</summary>
public sealed record PilotBlock(int Place, ImmutableArray<string> Across, Figure? Volts, Figure? Amps);

/// <summary>A rectifier behind a throttle, or one cell with a post of its own.</summary>
public sealed record RectifierBlock(int Place, string Throttle, bool IsBridge, string Cell, string Post, string From, Figure? Ohms);

/// <summary>A wire from a post to the core.</summary>
public sealed record BondBlock(int Place, string Post);
