using System.Collections.Immutable;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>
/// <c>fuse</c>: which fuse or breaker in series carries the load for hours and opens on a short before the wire is too hot
/// (docs/methods/deciding.md).
/// </summary>
/// <param name="LoadAmps">For hours.</param>
/// <param name="ShortAmps">What a dead short drives.</param>
/// <param name="Rush">At switching on; null for none.</param>
/// <param name="Wire">What is to be guarded: the thinnest wire in that path.</param>
/// <param name="MarginTimes">A rating is at least so many times the load.</param>
/// <param name="Families">Words of <see cref="Protector"/>.</param>
/// <param name="RatingsAmps">To be had, rising.</param>
public sealed record FuseChoice(
    double LoadAmps,
    double ShortAmps,
    FuseRush? Rush,
    FuseWire Wire,
    double MarginTimes,
    ImmutableArray<string> Families,
    ImmutableArray<double> RatingsAmps
) : Question
{
    /// <summary>Ratings to be had [A]; common practice, no source.</summary>
    public static ImmutableArray<double> UsualRatings { get; } =
    [0.1, 0.2, 0.25, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 6.3, 7.5, 8, 10, 13, 15, 16, 20];

    /// <summary>A rating is at least so many times the load; common practice, no source, the same as of <c>load-budget</c>.</summary>
    public const double UsualMargin = 1.2;

    /// <summary>Reads its fields.</summary>
    public static FuseChoice Read(QuestionFields fields)
    {
        var load = fields.Number("loadAmps", NumberRange.Positive);
        var shorted = fields.Number("shortAmps", NumberRange.Positive);
        if (fields.IsSoundAt("loadAmps") && fields.IsSoundAt("shortAmps") && shorted <= load)
            fields.Report("shortAmps", "is no more than the load", "what a dead short drives is more than the load");
        return new(
            load,
            shorted,
            fields.Part("rush") is { } rush
                ? new(rush.Number("amps", NumberRange.Positive), rush.Number("seconds", NumberRange.Positive))
                : null,
            FuseWire.Read(fields),
            fields.Number("marginTimes", NumberRange.AtLeast(1), UsualMargin),
            fields.Has("families") ? [.. fields.Places("families", least: 1).Select(f => Word(f))] : Protector.Words,
            [.. fields.Numbers("ratingsAmps", NumberRange.Positive, UsualRatings, least: 1).Order()]
        );
    }

    private static string Word(QuestionFields at)
    {
        var word = at.AsWord();
        if (word.Length > 0 && !Protector.Words.Contains(word, StringComparer.Ordinal))
            at.Report($"is \"{word}\"", $"one of {string.Join(", ", Protector.Words)} is expected");
        return word;
    }

    /// <inheritdoc/>
    public override FuseAnswer Answer()
    {
        var k = Wire.K;
        var bears = WireHeat.Seconds(Wire.SquareMillimetres, ShortAmps, k);
        var choices = Choices;
        var pick = Pick;
        return new(
            k,
            Math.Pow(k * Wire.SquareMillimetres, 2),
            bears,
            WireHeat.LeastSquare(ShortAmps, 1, k),
            WireHeat.FusingAmps(Wire.SquareMillimetres),
            WireHeat.MeltSeconds(Wire.SquareMillimetres, ShortAmps, Wire.StartCelsius),
            choices,
            pick?.Family,
            pick?.RatedAmps
        )
        {
            Words = Said(pick, bears),
            Cautions = ["Unplug it before you change a fuse. Never a larger one, never foil."],
            Outside =
            [
                "Gates of the standards, not of one maker: read the fuse’s own sheet.",
                "A fuse in one lead does not see a short between two throttles.",
                "Past a few seconds heat leaves the wire, and it bears more than this says.",
            ],
        };
    }

    private ImmutableArray<string> Said(FuseOption? pick, double bears) =>
        pick is null
            ? [FuseRefusal.Of(this)]
            :
            [
                FormattableString.Invariant(
                    $"Put in a {pick.RatedAmps:0.###} A {pick.Title}. A dead short opens it within {pick.OpensWithinSeconds:0.##} s. The wire bears it for {bears:0.##} s."
                ),
                .. pick.IsBreaker
                    ? ImmutableArray<string>.Empty
                    :
                    [
                        FormattableString.Invariant(
                            $"A breaker in place of it: of the same amps; its own sheet must say that it opens within {Math.Floor(bears * 100) / 100:0.##} s at {ShortAmps:0.#} A. {ResetType.All[2].Does} {ResetType.All[0].Does}"
                        ),
                    ],
            ];

    /// <summary>Of each family the least rating that carries the load with its margin.</summary>
    internal ImmutableArray<FuseOption> Choices => [.. Families.Select(Choose).OfType<FuseOption>()];

    /// <summary>The first of them that guards the wire and bears the rush; null where none does.</summary>
    internal FuseOption? Pick => Choices.FirstOrDefault(c => c.Guards && c.BearsRush);

    private FuseOption? Choose(string family)
    {
        foreach (var rated in RatingsAmps.Where(r => r >= MarginTimes * LoadAmps * (1 - 1e-9)))
            if (Protector.Of(family, rated) is { } row)
                return new(
                    family,
                    row.Title,
                    rated,
                    row.LatestSeconds(ShortAmps / rated),
                    Wire.IsGuarded(row, rated, ShortAmps),
                    Rush is null || row.EarliestSeconds(Rush.Amps / rated) >= Rush.Seconds
                );
        return null;
    }
}

/// <summary>What a unit draws for a moment when it is switched on.</summary>
public sealed record FuseRush(double Amps, double Seconds);

/// <summary>What <c>fuse</c> answers.</summary>
/// <param name="K">Of the wire [A·√s/mm²].</param>
/// <param name="WireAmpsSquaredSeconds">I²t that it bears.</param>
/// <param name="WireSeconds">It bears the short so long.</param>
/// <param name="LeastSquareMillimetres">The thinnest that bears the short for a second.</param>
/// <param name="FusingAmps">That melt it bare in open air (Preece).</param>
/// <param name="MeltSeconds">Until the short melts it (Onderdonk).</param>
/// <param name="Fuses">The least of each family that carries the load.</param>
/// <param name="Family">The one to put in; null where none does.</param>
/// <param name="RatedAmps">Its rating.</param>
public sealed record FuseAnswer(
    double K,
    double WireAmpsSquaredSeconds,
    double WireSeconds,
    double LeastSquareMillimetres,
    double FusingAmps,
    double MeltSeconds,
    ImmutableArray<FuseOption> Fuses,
    string? Family,
    double? RatedAmps
) : Answer;

/// <summary>A fuse or breaker.</summary>
/// <param name="Family">Its word.</param>
/// <param name="Title">For a person.</param>
/// <param name="RatedAmps">Its rating.</param>
/// <param name="OpensWithinSeconds">On a dead short; infinite where no gate says.</param>
/// <param name="Guards">The wire carries its rating, and it opens on a short and on overloads before the wire is too hot.</param>
/// <param name="BearsRush">It does not open at switching on.</param>
public sealed record FuseOption(string Family, string Title, double RatedAmps, double OpensWithinSeconds, bool Guards, bool BearsRush)
{
    internal bool IsBreaker => Family.Contains("breaker", StringComparison.Ordinal) || Family == "supplementary";
}
