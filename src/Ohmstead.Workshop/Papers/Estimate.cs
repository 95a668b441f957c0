using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Papers;

/// <summary>The estimate for the owner, as it was made: range, what is included, when the shop asks, what ends the repair, how long it holds.</summary>
public static class Estimate
{
    /// <summary>Its name in <see cref="PaperMade"/> and in addresses.</summary>
    public const string Id = "estimate";

    /// <summary>The estimate of a unit.</summary>
    public static Paper Make(JudgedUnit judged) =>
        new("Estimate", judged.Unit.Card.Tag, Advice.Foot, [.. Blocks(judged)]) { IsLarge = true };

    private static IEnumerable<Block> Blocks(JudgedUnit judged)
    {
        var made = judged.Unit.All<EstimateMade>().LastOrDefault();
        var day = made.Fact is null ? judged.At : made.Entry.At;
        yield return PaperParts.Letterhead(
            judged,
            [
                new("Tag", judged.Unit.Card.Tag),
                .. judged.Unit.Card.Owner.Length > 0 ? [new Pair("For", judged.Unit.Card.Owner)] : ImmutableArray<Pair>.Empty,
                new("Date", PaperParts.Day(day)),
            ]
        );
        foreach (var block in PaperParts.Warnings(judged))
            yield return block;
        yield return new Prose(Cautions.CautionTable.LocalCodes, Size.Small);
        if (made.Fact is not { } estimate)
        {
            yield return new Prose("No estimate was made yet.");
            yield break;
        }
        foreach (var block in Of(estimate, judged.Shop))
            yield return block;
        if (judged.Unit.All<GoAheadGiven>().LastOrDefault() is { Fact: { } given } word && word.Entry.Number > made.Entry.Number)
            yield return new Prose(Said(given, judged.Shop));
        else
            yield return new Signatures(["Go ahead, up to this sum", "Date, owner"]);
    }

    private static IEnumerable<Block> Of(EstimateMade estimate, Shop shop)
    {
        yield return new Heading($"{MoneyText.Range((double)estimate.Low, (double)estimate.High, shop)}", 1);
        yield return new Prose(
            $"Half of such jobs stay below {MoneyText.Whole((double)estimate.Low, shop)}, nine of ten below {MoneyText.Whole((double)estimate.High, shop)}. "
                + $"Above {MoneyText.Exact(estimate.AskAbove, shop)} we ask you first. This estimate holds until {Day(estimate.HoldsUntil)}."
        );
        foreach (var block in Included("What is included", [.. estimate.Lines.Where(l => !l.IsLooks)], shop))
            yield return block;
        foreach (var block in Included("For looks alone", [.. estimate.Lines.Where(l => l.IsLooks)], shop))
            yield return block;
        if (!estimate.Stops.IsEmpty)
        {
            yield return new Heading("What ends the repair", 2);
            yield return new Points([
                .. estimate.Stops.Select(s => $"{Sentences.Large(s.Words)}: you pay {MoneyText.Exact(s.Fee, shop)}."),
            ]);
        }
        yield return new Prose("Minutes are those at the bench. Waiting for parts or glue is left out.", Size.Small);
    }

    private static IEnumerable<Block> Included(string title, ImmutableArray<EstimateLine> lines, Shop shop)
    {
        if (lines.IsEmpty)
            yield break;
        yield return new Heading(title, 2);
        yield return new Table(
            [new("Work", 6), new("About", 2, IsFigure: true), new("Parts", 2, IsFigure: true), new("", 3)],
            [
                .. lines.Select(l =>
                    Row.Of(
                        l.IsLooks ? LooksPlan.ItemOf(l.Words) : l.Words,
                        Counted.Minutes(l.Minutes),
                        l.Parts > 0 ? MoneyText.Exact(l.Parts, shop) : "",
                        l.Percent < 99.5 ? $"if needed, {ValueText.Plain(Math.Round(l.Percent))} of 100" : ""
                    )
                ),
            ]
        );
    }

    private static string Said(GoAheadGiven given, Shop shop) =>
        $"Go-ahead {given.How} on {Day(given.Date)}"
        + (given.Limit is { } limit ? $", up to {MoneyText.Exact(limit, shop)}" : "")
        + (given.Words.Length > 0 ? $": “{given.Words}”" : ".");

    private static string Day(DateOnly day) => day.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
}
