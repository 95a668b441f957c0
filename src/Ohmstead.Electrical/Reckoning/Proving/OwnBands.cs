using System.Collections.Immutable;
using System.Text.Json;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>own-bands</c>: new readings against the shop's own sound units of the type (docs/methods/proving.md).</summary>
/// <param name="Readings">Each reading with its history.</param>
public sealed record OwnBands(ImmutableArray<OwnReading> Readings) : Question
{
    /// <summary>Reads its fields.</summary>
    public static OwnBands Read(QuestionFields fields) => new(fields.List("readings", OwnReading.Read));

    /// <inheritdoc/>
    public override OwnBandsAnswer Answer() =>
        new([.. Readings.Select(OwnBandFit.Of)])
        {
            Words =
            [
                .. Readings
                    .Select(OwnBandFit.Of)
                    .Where(b => b.Verdict.StartsWith("unusual", StringComparison.Ordinal))
                    .Select(b =>
                        FormattableString.Invariant(
                            $"{b.Id}: unusual. About {b.ChancePercent:0.0} of 100 sound units read as far off. Read it again."
                        )
                    ),
            ],
            Outside = ["The chances hold under the assumption that the history is of sound units of one type.", TestRecord.NoCertification],
        };
}

/// <summary>A reading, what it was on sound units, and what it is now.</summary>
/// <param name="Id">Its name.</param>
/// <param name="History">Numbers of sound units; OL is left out.</param>
/// <param name="GenericLow">Low end of the type sheet's 95 % band.</param>
/// <param name="GenericHigh">High end.</param>
/// <param name="New">Now; null for OL.</param>
public sealed record OwnReading(string Id, ImmutableArray<double> History, double GenericLow, double GenericHigh, double? New)
{
    /// <summary>Reads one.</summary>
    internal static OwnReading Read(QuestionFields fields)
    {
        var id = fields.Word("id");
        var history = fields.Places("history").Select(OrOver).OfType<double>().ToImmutableArray();
        var (low, high) = (0.0, 1.0);
        if (fields.NeededPart("generic", "{ \"low\": …, \"high\": … }") is { } generic)
        {
            (low, high) = (generic.Number("low", NumberRange.Any), generic.Number("high", NumberRange.Any));
            if (low >= high && fields.IsSoundAt("generic"))
                fields.Report("generic", "low is not below high", "the sheet’s band, low before high");
        }
        double? now = fields.Has("new") ? OrOver(fields.Place("new")) : fields.Number("new", NumberRange.Any);
        return new(id, history, low, high, now);
    }

    private static double? OrOver(QuestionFields at)
    {
        if (at.Element.ValueKind == JsonValueKind.Number)
            return at.AsNumber(NumberRange.Any);
        if (at.Element.ValueKind != JsonValueKind.String || at.Element.GetString() != "OL")
            at.Report($"is {at.Said}", "a number or \"OL\" is expected");
        return null;
    }
}

/// <summary>What <c>own-bands</c> answers.</summary>
public sealed record OwnBandsAnswer(ImmutableArray<OwnBand> Readings) : Answer;

/// <summary>A reading's own band.</summary>
/// <param name="Id">Its name.</param>
/// <param name="Count">Sound units used.</param>
/// <param name="LeftOut">Values of the history that lie too far from the others.</param>
/// <param name="Centre">Where the next sound unit is expected.</param>
/// <param name="Low">Low end of its 95 %.</param>
/// <param name="High">High end.</param>
/// <param name="ChancePercent">That a sound unit reads as far off; null below three units.</param>
/// <param name="Sigma">The same chance as a normal deviate, signed.</param>
/// <param name="Verdict">usual, unusual, too few of this kind, or not judged.</param>
public sealed record OwnBand(
    string Id,
    int Count,
    ImmutableArray<double> LeftOut,
    double Centre,
    double Low,
    double High,
    double? ChancePercent,
    double? Sigma,
    string Verdict
);
