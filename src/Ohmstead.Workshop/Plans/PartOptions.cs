using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>What can be done about one part: the acts, and what can be fitted with its price.</summary>
/// <param name="About">Element, slider or part of the look-over.</param>
/// <param name="Mode">The fault that it is about; empty for none.</param>
/// <param name="Headline">What it is, in plain words.</param>
/// <param name="Remedy">What the table of what to do says; null where it says nothing.</param>
/// <param name="Fits">What can be fitted, the same part first.</param>
/// <param name="Minutes">What replacing usually takes [min].</param>
/// <param name="Standing">What was decided; null for nothing.</param>
public sealed record PartOptions(
    string About,
    string Mode,
    string Headline,
    Remedy? Remedy,
    ImmutableArray<PartFit> Fits,
    double Minutes,
    PartDecided? Standing
)
{
    /// <summary>A diode costs so much. Invented.</summary>
    private const decimal DiodePrice = 1.40m;

    /// <summary>The options; null where the unit has no such part.</summary>
    /// <param name="own">The sheet with this unit's changes.</param>
    /// <param name="mode">Fault mode; the most probable of the part where it is left empty.</param>
    public static PartOptions? Of(BenchUnit unit, TypeSheet own, FindingsView? view, Shop shop, string about, string mode)
    {
        var isItem = shop.LookOver.Any(i => i.Id == about);
        var isPart = own.KindOf(own.PartsOf(about)[0]) is not null;
        if (!isItem && !isPart)
            return null;
        var standing = WorkToDo.Decisions(unit).GetValueOrDefault(about);
        mode =
            mode.Length > 0 ? mode
            : standing?.Mode is { Length: > 0 } decided ? decided
            : view?.Findings.Where(f => f.Members.Any(m => m.Element == about)).MaxBy(f => f.Probability)?.Mode.Mode ?? "";
        var fault = isPart ? WorkToDo.ModeOf(own, about, mode) : null;
        var remedy = fault is null ? null : WhatToDo.For(own, fault);
        var (from, to, parts) = WorkOfItem.Of(about);
        return new(
            about,
            fault?.Mode ?? "",
            fault is not null ? PartNames.Headline(own, fault) : WorkToDo.Title(own, about),
            remedy,
            Fitting(own, shop, about, remedy, isItem ? parts.Sum(p => p.Price) : null),
            remedy is not null ? WorkOfItem.Middle(remedy.Minutes.From, remedy.Minutes.To) : WorkOfItem.Middle(from, to),
            standing
        );
    }

    /// <summary>The fact of a choice; or what is wrong with it.</summary>
    /// <param name="fit">What is to be fitted; null for the same part.</param>
    /// <param name="price">As typed; empty for nothing.</param>
    /// <param name="minutes">As typed; empty for the usual.</param>
    public TypedFact Choose(DecidedAct act, PartFit? fit, string price, string minutes, string why)
    {
        var money = (Value: 0.0, Problem: "");
        if (act == DecidedAct.Replace && price.Trim().Length > 0)
            money = ShopEdit.Number(price, 0, 1e6);
        var time = (Value: 0.0, Problem: "");
        if (act > DecidedAct.Watch && minutes.Trim().Length > 0)
            time = ShopEdit.Number(minutes, 0.5, 10_000);
        if (money.Problem.Length + time.Problem.Length > 0)
            return new(null, money.Problem.Length > 0 ? $"Price: {money.Problem}" : $"Minutes: {time.Problem}");
        var isReplaced = act == DecidedAct.Replace;
        return new(
            new PartDecided(
                About,
                Mode,
                act,
                isReplaced ? fit?.Name ?? "" : "",
                decimal.Round((decimal)money.Value, 2),
                time.Value > 0 ? time.Value : null,
                why.Trim(),
                isReplaced ? fit?.Figures ?? [] : []
            ),
            ""
        );
    }

    private static ImmutableArray<PartFit> Fitting(TypeSheet own, Shop shop, string about, Remedy? remedy, decimal? itemPrice)
    {
        var known = WornPart.Of(own, shop, about);
        var isDisc = own.Elements.FirstOrDefault(e => e.Id == about) is Rectifier;
        var same =
            known is not null ? (decimal)known.Price
            : isDisc && remedy is { Parts.IsEmpty: false } ? (decimal)remedy.Parts[0].Price
            : itemPrice ?? remedy?.Parts.Sum(p => (decimal)p.Price) ?? 0;
        return isDisc
            ? [new("", "Same part, new", same, []), new("silicon diode", "Silicon diode", DiodePrice, DiscChoice.DiodeFigures)]
            : [new("", "Same part, new", same, [])];
    }
}

/// <summary>Something that can be fitted.</summary>
/// <param name="Name">What the plan calls it; empty for the same part.</param>
/// <param name="Title">What the choice calls it.</param>
/// <param name="Price">In the shop's money.</param>
/// <param name="Figures">Of a different part.</param>
public sealed record PartFit(string Name, string Title, decimal Price, ImmutableArray<PartFigure> Figures);
