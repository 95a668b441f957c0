using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>What was typed at a step, as facts for the journal, or what is wrong with it.</summary>
public static class StepEntry
{
    private const int MostPieces = 500;

    /// <summary>A step was done.</summary>
    public static TypedFact Off(TakeApartStep step, string cup, string pieces, string words)
    {
        var (at, cupProblem) = Whole(cup.Trim().Length == 0 ? "0" : cup, 0, 999);
        var (count, countProblem) = Whole(pieces, 1, MostPieces);
        return cupProblem.Length > 0 ? new(null, $"The cup: {cupProblem}")
            : countProblem.Length > 0 ? new(null, $"The pieces: {countProblem}")
            : new(new TakenOff(step.Id, at, count, words.Trim()), "");
    }

    /// <summary>Pieces broke, were lost or are to be renewed.</summary>
    public static TypedFact Note(OffStep step, PieceFate fate, string pieces, string words)
    {
        var left = step.Fact.Pieces - step.NotAsTheyCame;
        if (left == 0)
            return new(null, "You noted all its pieces already.");
        var (count, problem) = Whole(pieces, 1, left);
        return problem.Length > 0 ? new(null, $"The pieces: {problem}") : new(new PieceNoted(step.Step.Id, fate, count, words.Trim()), "");
    }

    /// <summary>
    /// A step went back. What came off and neither went in again nor was renewed needs a reason and somebody who answers for
    /// it. Each wire that the step had lifted counts as soldered anew, a new one too: a check made while it hung loose is none.
    /// </summary>
    public static (ImmutableArray<Fact> Facts, string Refused) Back(
        TypeSheet sheet,
        OffStep step,
        string old,
        string renewed,
        string why,
        string by
    )
    {
        var (went, oldProblem) = Whole(old, 0, MostPieces);
        var (fresh, newProblem) = Whole(renewed.Trim().Length == 0 ? "0" : renewed, 0, MostPieces);
        if (oldProblem.Length > 0)
            return ([], $"Old pieces: {oldProblem}");
        if (newProblem.Length > 0)
            return ([], $"New pieces: {newProblem}");
        if (went > step.Fact.Pieces)
            return ([], $"{Show(step.Fact.Pieces)} came off, so no more old ones can go back. Enter the rest as new.");
        if (went + fresh != step.Fact.Pieces && (why.Trim().Length == 0 || by.Trim().Length == 0))
            return (
                [],
                $"{Show(step.Fact.Pieces)} came off and {Show(went + fresh)} went in. Look for the rest, or say why and sign for it."
            );
        var facts = ImmutableArray.CreateBuilder<Fact>();
        facts.Add(new PutBack(step.Step.Id, went, fresh, why.Trim(), by.Trim()));
        foreach (var wire in step.Step.Lifts.Where(w => IsSoldered(w, sheet)))
            facts.Add(new PartChanged(wire, PartChange.Rewired, null, "put back"));
        return (facts.ToImmutable(), "");
    }

    /// <summary>A lamp is screwed in; everything else that a step lifts is soldered.</summary>
    private static bool IsSoldered(string element, TypeSheet sheet) =>
        sheet.Elements.FirstOrDefault(e => e.Id == element) is not (null or Lamp);

    private static (int Count, string Problem) Whole(string text, int least, int most)
    {
        var (value, problem) = ShopEdit.Number(text, least, most);
        return problem.Length > 0 ? (0, problem)
            : value != Math.Floor(value) ? (0, $"{ShopEdit.Show(value)} is not a whole number.")
            : ((int)value, "");
    }

    private static string Show(int count) => count.ToString(CultureInfo.InvariantCulture);
}
