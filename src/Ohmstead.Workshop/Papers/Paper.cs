using System.Collections.Immutable;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Job;

namespace Ohmstead.Workshop.Papers;

/// <summary>What a paper says, top to bottom; how it is set on pages is not its concern.</summary>
/// <param name="Title">What the paper is called.</param>
/// <param name="Tag">The unit's tag, on every page.</param>
/// <param name="Foot">Stands at the foot of every page.</param>
public sealed record Paper(string Title, string Tag, string Foot, ImmutableArray<Block> Blocks)
{
    /// <summary>True for a page that is read without glasses: no letter on it is smaller than 14 points.</summary>
    public bool IsLarge { get; init; }

    /// <summary>The language it is in, as readers of PDF know it.</summary>
    public string Language { get; init; } = "en";

    /// <summary>Hashes of the photos on it.</summary>
    public IEnumerable<string> Photos =>
        Blocks.SelectMany(b =>
            b switch
            {
                Letterhead o when o.Photo.Length > 0 => [o.Photo],
                Photos p => p.Items.Select(i => i.Hash),
                _ => Enumerable.Empty<string>(),
            }
        );

    /// <summary>Every word on the paper, one block a line: what tests and search look through.</summary>
    public string Text => string.Join('\n', Blocks.SelectMany(b => b.Words).Prepend(Title).Append(Foot));
}

/// <summary>A part of a paper.</summary>
public abstract record Block
{
    /// <summary>The words in it.</summary>
    public abstract IEnumerable<string> Words { get; }
}

/// <summary>Who made the paper, of what, and a picture of it.</summary>
/// <param name="Shop">Name of the shop.</param>
/// <param name="Address">Where the shop is; lines.</param>
/// <param name="Title">What the unit is.</param>
/// <param name="Photo">Hash of a photo; empty for none.</param>
public sealed record Letterhead(string Shop, string Address, string Title, ImmutableArray<Pair> Pairs, string Photo) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [Shop, Address, Title, .. Pairs.Select(p => p.ToString())];
}

/// <summary>What a page says before all else, with the unit's tag beside it.</summary>
public sealed record Masthead(string Title, string Tag) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [Title, Tag];
}

/// <summary>A name and what it is.</summary>
public sealed record Pair(string Name, string Value)
{
    /// <inheritdoc/>
    public override string ToString() => $"{Name}: {Value}";
}

/// <summary>A heading; level 1 begins a part of the paper, level 2 a section of it.</summary>
public sealed record Heading(string Text, int Level) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [Text];
}

/// <summary>Running words.</summary>
public sealed record Prose(string Text, Size Size = Size.Usual) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [Text];
}

/// <summary>Points, one under the other.</summary>
public sealed record Points(ImmutableArray<string> Items, Size Size = Size.Usual) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => Items;
}

/// <summary>How large words are set.</summary>
public enum Size
{
    /// <summary>For tables and what is looked up.</summary>
    Small,

    /// <summary>For reading.</summary>
    Usual,

    /// <summary>For old eyes at arm's length.</summary>
    Large,
}

/// <summary>Something that must not be overlooked, in a frame.</summary>
public sealed record Notice(Weight Weight, string Title, ImmutableArray<string> Lines) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [Title, .. Lines];
}

/// <summary>A table. Its header is set again on every page that it runs over.</summary>
public sealed record Table(ImmutableArray<Column> Columns, ImmutableArray<Row> Rows, Size Size = Size.Small) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words =>
        [string.Join(" | ", Columns.Select(c => c.Title)), .. Rows.Select(r => string.Join(" | ", r.Cells))];
}

/// <summary>A column of a table.</summary>
/// <param name="Share">Its share of the width.</param>
/// <param name="IsFigure">Figures, set to the right.</param>
/// <param name="IsBlank">To be filled in by pencil.</param>
public sealed record Column(string Title, double Share, bool IsFigure = false, bool IsBlank = false);

/// <summary>A row of a table; its mark stands before the last cell.</summary>
/// <param name="Under">Words under the row, over its whole width; may be empty.</param>
public sealed record Row(ImmutableArray<string> Cells, Weight Weight = Weight.None, string Under = "")
{
    /// <summary>A row without a mark.</summary>
    public static Row Of(params ReadOnlySpan<string> cells) => new([.. cells]);
}

/// <summary>Bars under each other: how much of what there is, is used.</summary>
public sealed record Bars(ImmutableArray<Bar> Items) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => Items.Select(b => $"{b.Title} | {b.Value} | {b.Beside}");
}

/// <summary>A bar, named at its left and its value at its right.</summary>
/// <param name="Share">How much of it is filled; more than 1 is drawn full.</param>
/// <param name="Beside">Stands at the end of the line; may be empty.</param>
public sealed record Bar(string Title, double Share, string Value, string Beside);

/// <summary>Photos, two beside each other, with what they show.</summary>
public sealed record Photos(ImmutableArray<Photo> Items) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => Items.Select(p => p.Caption);
}

/// <summary>A photo with what it shows and the places marked on it.</summary>
public sealed record Photo(string Hash, string Caption, ImmutableArray<(double X, double Y)> Pins);

/// <summary>The unit's circuit on a page of its own, which lies on its side where that makes the drawing larger.</summary>
public sealed record Circuit(string Title, DrawingList Drawing) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [Title];
}

/// <summary>Two columns side by side where they fit, under each other where not.</summary>
public sealed record Sides(ImmutableArray<Block> Left, ImmutableArray<Block> Right) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [.. Left.Concat(Right).SelectMany(b => b.Words)];
}

/// <summary>Lines to sign on, each with what stands under it.</summary>
public sealed record Signatures(ImmutableArray<string> Under) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => Under;
}

/// <summary>What follows begins on a new page.</summary>
public sealed record NewPage : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [];
}

/// <summary>Empty lines to write on.</summary>
public sealed record Lines(int Count) : Block
{
    /// <inheritdoc/>
    public override IEnumerable<string> Words => [];
}
