using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>What the owner runs on each pair of posts, as the owner said; what was said last counts.</summary>
/// <param name="Posts">The pairs that something hangs on.</param>
public sealed record LayoutStated(ImmutableArray<LayoutPost> Posts) : Fact;

/// <summary>A pair of posts and what the owner runs on it.</summary>
/// <param name="From">One terminal.</param>
/// <param name="To">The other.</param>
/// <param name="Items">What hangs on it.</param>
/// <param name="Wire">From the posts to the track; null where nothing was said of it.</param>
public sealed record LayoutPost(string From, string To, ImmutableArray<LayoutItem> Items, LayoutWire? Wire);

/// <summary>Something that draws current, so many of it.</summary>
/// <param name="What">Its word: one of <see cref="Electrical.Reckoning.Proving.LoadBudget.UsualAmps"/>.</param>
/// <param name="Count">How many; 1 or more.</param>
public sealed record LayoutItem(string What, int Count);

/// <summary>The owner's wire from a pair of posts.</summary>
/// <param name="GaugeAwg">Its gauge [AWG].</param>
/// <param name="FeetOneWay">Its length one way [ft].</param>
public sealed record LayoutWire(int GaugeAwg, double FeetOneWay);
