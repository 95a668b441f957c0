using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.Reckoning.Standards;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Job;

/// <summary>What a pair of posts gives, beside open standards of toys and model railroads: the question <c>standards</c>.</summary>
public static class LayoutStandards
{
    /// <summary>Between the rails [mm], with what people call it.</summary>
    public static ImmutableArray<(double Millimetres, string Title)> Tracks { get; } =
    [(9, "N, 9 mm"), (16.5, "HO, 16.5 mm"), (22.5, "S, 22.5 mm"), (32, "O, 32 mm"), (45, "G and standard gauge, 45 mm and more")];

    /// <summary>The rows for one pair of posts, each a sentence or two.</summary>
    /// <param name="isTrack">The rails hang on it, else lamps and accessories.</param>
    /// <param name="trackMillimetres">Between the rails; null where it is not known.</param>
    public static ImmutableArray<string> Of(LayoutBudget budget, PostBudget post, TypeSheet sheet, bool isTrack, double? trackMillimetres)
    {
        var figures = ImmutableDictionary.CreateRange(
            new Dictionary<ToyFigure, double>
            {
                [ToyFigure.Volts] = post.Supply.Volts,
                [isTrack ? ToyFigure.TrackVolts : ToyFigure.AccessoryVolts] = post.Supply.Volts,
                [ToyFigure.Amps] = budget.Question.UsableAmps,
                [ToyFigure.VoltAmperes] = budget.Question.UsableAmps * budget.Posts.Max(p => p.Supply.Outlet.Limit.LoadedVolts),
                [ToyFigure.LineHertz] = sheet.SupplyHertz,
            }
        );
        var current = post.Supply.Outlet.Spec.Quantity == Quantity.DcVolts ? "dc" : "ac";
        return [.. new ToyStandards(current, trackMillimetres, figures).Answer().Rows.Select(Said)];
    }

    private static string Said(ToyRow row) =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"{Sentences(row.Says)}: {Bound(row)}. Here {row.Value:0.#} {row.Unit}{(row.Within ? "" : row.Value > row.Most ? ": more" : ": less")}. ({row.Source})"
        );

    private static string Bound(ToyRow row) =>
        (row.Least, row.Most) switch
        {
            ({ } least, { } most) when least == most => string.Create(CultureInfo.InvariantCulture, $"{most:0.##} {row.Unit}"),
            ({ } least, { } most) => string.Create(CultureInfo.InvariantCulture, $"{least:0.##}–{most:0.##} {row.Unit}"),
            ({ } least, _) => string.Create(CultureInfo.InvariantCulture, $"at least {least:0.##} {row.Unit}"),
            var (_, most) => string.Create(CultureInfo.InvariantCulture, $"{(row.IsNominal ? "" : "at most ")}{most:0.##} {row.Unit}"),
        };

    private static string Sentences(string words) => Words.Sentences.Large(words);
}
