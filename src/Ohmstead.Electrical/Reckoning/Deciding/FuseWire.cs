using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Electrical.Reckoning.Standards;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>The wire that a fuse guards.</summary>
/// <param name="SquareMillimetres">Of one conductor.</param>
/// <param name="IsCopper">Else aluminum.</param>
/// <param name="StartCelsius">With its load.</param>
/// <param name="EndCelsius">The most that its insulation takes for a moment.</param>
public sealed record FuseWire(double SquareMillimetres, bool IsCopper, double StartCelsius, double EndCelsius)
{
    /// <summary>Insulation of PVC takes this for a moment (IEC 60364-5-54, seen) [°C].</summary>
    public const double UsualEnd = 160;

    /// <summary>A wire with its load [°C], in the same table.</summary>
    public const double UsualStart = 70;

    /// <summary>A wire bears so many times the amps that it carries for an hour (IEC 60364-4-43, 433.1, from memory).</summary>
    private const double OverloadTimes = 1.45;

    /// <summary>Aluminum carries so much of what copper does: common practice, from memory.</summary>
    private const double AluminumShare = 0.78;

    internal double K => WireHeat.K(IsCopper, StartCelsius, EndCelsius);

    /// <summary>Amps that it carries for hours: those of the thickest tabled gauge that is no thicker than it.</summary>
    internal double CarriesAmps =>
        LoadWire.Carries(
            LoadWire.UsualAmps,
            Enumerable.Range(0, 42).First(n => n == 41 || Cord.AreaOf(n) <= SquareMillimetres * (1 + 1e-9))
        ) * (IsCopper ? 1 : AluminumShare);

    /// <summary>Seconds that it bears amps: more than an hour where it carries them or nearly so.</summary>
    internal double BearsSeconds(double amps) =>
        amps <= OverloadTimes * CarriesAmps ? double.PositiveInfinity : WireHeat.Seconds(SquareMillimetres, amps, K);

    /// <summary>
    /// True where the wire carries the rating for hours, the short opens it before the wire is too hot, and so does every overload between
    /// them that a gate of the standard names.
    /// </summary>
    internal bool IsGuarded(Protector row, double rated, double shortAmps) =>
        CarriesAmps >= rated
        && row.LatestSeconds(shortAmps / rated) <= WireHeat.Seconds(SquareMillimetres, shortAmps, K)
        && row.Gates.Where(g => g.Times > 1 && g.Times * rated <= shortAmps && double.IsFinite(g.MostSeconds))
            .All(g => row.LatestSeconds(g.Times) <= BearsSeconds(g.Times * rated));

    internal static FuseWire Read(QuestionFields question)
    {
        if (question.NeededPart("wire", "{ \"gaugeAwg\": … } or { \"squareMillimetres\": … }") is not { } fields)
            return new(1, true, UsualStart, UsualEnd);
        var area = fields.Has("squareMillimetres")
            ? fields.Number("squareMillimetres", NumberRange.Positive)
            : Cord.AreaOf(fields.Whole("gaugeAwg", 0, 40));
        var (start, end) = (
            fields.Number("startCelsius", NumberRange.Celsius, UsualStart),
            fields.Number("endCelsius", NumberRange.Celsius, UsualEnd)
        );
        if (end <= start)
            fields.Report("endCelsius", "is not above startCelsius", "the wire begins cooler than it may end");
        return new(area, fields.OneOf("metal", ["copper", "aluminium"], "copper") == "copper", start, Math.Max(end, start + 1));
    }
}
