using System.Collections.Immutable;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawing;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Components;

/// <summary>What a second screen shows of a unit: the reading that is asked for, where its leads go, and the value once it is entered.</summary>
/// <param name="Mark">Stands beside the tag of a unit to practice on; empty for a real one.</param>
/// <param name="Setup">Where the leads go and what else is set, in words.</param>
/// <param name="Value">What the meter showed, without its unit; empty before.</param>
/// <param name="Unit">The unit of it; empty where there is none.</param>
/// <param name="Meaning">What it means; null before.</param>
/// <param name="Path">From lead to lead, without wires and joints that nothing speaks against; null where nothing joins the two.</param>
/// <param name="HasLeads">The meter's leads are on the ends of the path.</param>
/// <param name="Before">The reading that was entered before this one was asked for, with what it means; null for none.</param>
public sealed record ShownReading(
    string Tag,
    string Mark,
    string Title,
    string Setup,
    string Value,
    string Unit,
    Meaning? Meaning,
    string Band,
    Ladder? Path,
    bool HasLeads,
    (string Words, Meaning Meaning)? Before
)
{
    /// <summary>What is asked for now, or was entered since; null where the unit has no reading to offer.</summary>
    /// <param name="offers">All readings of the unit as they are offered now.</param>
    /// <param name="asked">What the bench asks for (<see cref="AskedReadings"/>).</param>
    /// <param name="judge">The band of a reading, and what its last value means; null for none.</param>
    public static ShownReading? Now(
        BenchUnit unit,
        UnitModel model,
        ImmutableArray<ReadingOffer> offers,
        (string Reading, bool IsEntered)? asked,
        Func<ReadingOffer, (Expectation Band, Meaning? Meaning)> judge,
        Diagnosed? diagnosed
    )
    {
        ReadingOffer? Find(string? id) => offers.FirstOrDefault(o => o.Spec.Id == id);
        if (Find(asked?.Reading ?? NextAdvice.First([], offers)) is not { } offer)
            return null;
        var judged = judge(offer);
        if (asked is { IsEntered: true })
            return Of(unit.Card.Tag, model, offer, judged, null, diagnosed);
        var before = Find(unit.CurrentReadings.LastOrDefault().Fact?.ReadingId);
        return Of(
            unit.Card.Tag,
            model,
            offer,
            (judged.Band, null),
            before?.Last is not null && judge(before).Meaning is { } meant ? (LineOf(before), meant) : null,
            diagnosed
        );
    }

    /// <summary>What a value means whose band is known: that of the meter it was taken with.</summary>
    public static Meaning? MeaningOf(ReadingOffer offer, Expectation band, Workshop.Shops.Shop shop) =>
        offer.Doubted.Length > 0 ? Meaning.OfDoubted(offer.Doubted, offer.Spec)
        : offer.Last is { } last
            ? Meaning.Of(last.Fact.Shown, offer.Spec, band, MeterInHand.Of(last.Fact.Bench, shop).For(offer.Spec.Quantity))
        : null;

    /// <summary>Puts it together.</summary>
    /// <param name="offer">The reading as it is offered now.</param>
    /// <param name="judged">Its band, and what its value means; null where it is not entered.</param>
    private static ShownReading Of(
        string tag,
        UnitModel model,
        ReadingOffer offer,
        (Expectation Band, Meaning? Meaning) judged,
        (string Words, Meaning Meaning)? before,
        Diagnosed? diagnosed
    )
    {
        var (band, meaning) = judged;
        var (sheet, spec) = (model.Sheet, offer.Spec);
        var words = SetupWords.Of(sheet, spec, offer.State);
        var (value, unit) = meaning is null ? ("", "") : Split(ShownText.Write(offer.Last!.Value.Fact.Shown, spec.Quantity));
        var path = MeasuredPath.Of(sheet, spec with { State = offer.State });
        return new(
            tag,
            PracticeTypes.IsOne(sheet.Id) ? PracticeTypes.Mark : "",
            spec.Title,
            words.Red.Length > 0
                ? $"Red on {words.Red}, black on {words.Black}. Power: {words.Feed}."
                : $"At the plug. Power: {words.Feed}.",
            value,
            unit,
            meaning,
            band.Band,
            path is null ? null : Short(CircuitOverlays.Ladder(sheet, path, offer.State.Controls, diagnosed)),
            spec.From.Length > 0,
            before
        );
    }

    /// <summary>A reading on one line: "Post 1, full throttle, 4 Ω load: 14.8 V".</summary>
    private static string LineOf(ReadingOffer offer) =>
        $"{offer.Spec.Title}: {ShownText.Write(offer.Last!.Value.Fact.Shown, offer.Spec.Quantity)}";

    /// <summary>"14.8" and "V"; words without a number are shown whole.</summary>
    private static (string, string) Split(string shown) =>
        shown.LastIndexOf(' ') is > 0 and var at && char.IsAsciiDigit(shown[0]) ? (shown[..at], shown[(at + 1)..]) : (shown, "");

    private static Ladder Short(Ladder whole) =>
        whole with
        {
            Rungs =
            [
                .. whole
                    .Rungs.Where(r => r.Chance > 0 || r.Kind is not (ElementKind.Wire or ElementKind.Joint))
                    .Select(r => r with { Name = Sentences.Large(Sentences.Bare(r.Kind is null ? r.Name : r.Name.Split(" of ")[0])) }),
            ],
        };
}
