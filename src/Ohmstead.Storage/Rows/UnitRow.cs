using System.Linq.Expressions;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Rows;

/// <summary>A unit: its card for the lists, how far its journal goes, and what it is found by.</summary>
internal sealed class UnitRow
{
    public Guid Id { get; set; }
    public int LastNumber { get; set; }
    public string Tag { get; set; } = "";
    public string Kind { get; set; } = "";
    public string SheetId { get; set; } = "";
    public string Owner { get; set; } = "";
    public string Photo { get; set; } = "";
    public string LastDone { get; set; } = "";
    public DateTimeOffset LastAt { get; set; }
    public NextAction NextAction { get; set; }
    public string NextWords { get; set; } = "";
    public double NextMinutes { get; set; }
    public string NextAbout { get; set; } = "";
    public bool IsHandedBack { get; set; }

    /// <summary>Where it stands among the others by what is next, as <see cref="HalfHour.PlaceOf"/> has it.</summary>
    public int Place { get; set; }

    /// <summary>What the last finished diagnosis doubts, as <see cref="Ohmstead.Workshop.Units.DoubtsText"/> has it; empty for nothing.</summary>
    public string Doubts { get; set; } = "";

    /// <summary>The parts of the drawer in it, as <see cref="Ohmstead.Workshop.Drawers.FittedPart"/> writes them; empty for none.</summary>
    public string Fitted { get; set; } = "";

    /// <summary>How many contradictions of its benches are open.</summary>
    public int Contradictions { get; set; }

    /// <summary>Every word of the card and the journal once, as <see cref="SearchText"/> has it.</summary>
    public string Search { get; set; } = "";

    /// <summary>The title of its kind as it is searched; apart, because it changes with the sheet.</summary>
    public string KindSearch { get; set; } = "";

    /// <summary>
    /// The row without the words it is found by, what is doubted and what was fitted: most of it, and on no card. Every other field is in it by itself, so
    /// that none can be forgotten.
    /// </summary>
    public static Expression<Func<UnitRow, UnitRow>> Light { get; } = MakeLight();

    public UnitCard Card =>
        new(
            Id,
            Tag,
            Kind,
            SheetId,
            Owner,
            Photo,
            LastDone,
            LastAt,
            new NextThing(NextAction, NextWords, NextMinutes, NextAbout),
            IsHandedBack
        );

    public void Take(UnitCard card)
    {
        (Tag, Kind, SheetId, Owner, Photo) = (card.Tag, card.Kind, card.SheetId, card.Owner, card.Photo);
        (LastDone, LastAt, IsHandedBack) = (card.LastDone, card.LastAt, card.IsHandedBack);
        KindSearch = SearchText.Of(card.Kind);
        Take(card.Next);
    }

    public void Take(NextThing next) =>
        (NextAction, NextWords, NextMinutes, NextAbout, Place) = (
            next.Action,
            next.Words,
            next.Minutes,
            next.About,
            HalfHour.PlaceOf(next)
        );

    private static Expression<Func<UnitRow, UnitRow>> MakeLight()
    {
        var row = Expression.Parameter(typeof(UnitRow), "row");
        var fields =
            from field in typeof(UnitRow).GetProperties()
            where field.CanWrite && field.Name is not (nameof(Doubts) or nameof(Fitted) or nameof(Search) or nameof(KindSearch))
            select Expression.Bind(field, Expression.Property(row, field));
        return Expression.Lambda<Func<UnitRow, UnitRow>>(Expression.MemberInit(Expression.New(typeof(UnitRow)), fields), row);
    }
}
