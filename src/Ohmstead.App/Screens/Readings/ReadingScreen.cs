using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Components;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Screens.Readings;

/// <summary>A screen on which readings of a unit are taken or shown: what is offered, the bench as it stands, the background's answer.</summary>
public abstract class ReadingScreen : UnitScreen
{
    private readonly HashSet<Guid> kept = [];
    private int askedFor = -1;
    private CircuitKey? circuit;

    /// <summary>Works out what is probably wrong, behind the screens.</summary>
    [Inject]
    protected UnitDiagnoses Diagnoses { get; set; } = null!;

    /// <summary>The shop's settings.</summary>
    protected Workshop.Shops.Shop Shop { get; private set; } = null!;

    /// <summary>The unit's own circuit; null while its kind is not known.</summary>
    protected UnitModel? Model { get; private set; }

    /// <summary>What was read on it.</summary>
    protected UnitReadings? Readings { get; private set; }

    /// <summary>All readings of its sheet as they are offered now.</summary>
    protected ImmutableArray<ReadingOffer> Offers { get; private set; } = [];

    /// <summary>Why nothing can be read, in words; empty when it can.</summary>
    protected string Trouble { get; private set; } = "";

    /// <summary>The meter that the next reading is judged with.</summary>
    protected Meter Meter { get; private set; } = Meter.Usual;

    /// <summary>How the background stands.</summary>
    protected DiagnosisState Answer => Diagnoses.Of(Id);

    /// <summary>The bands.</summary>
    internal ExpectedBands Bands { get; } = new();

    /// <summary>The offer of a reading, or null.</summary>
    protected ReadingOffer? Offer(string? id) => Offers.FirstOrDefault(o => o.Spec.Id == id);

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Diagnoses.Changed += OnAnswer;
    }

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        Shop = await Bench.ShopAsync();
        if (Sheet is null)
        {
            (Trouble, Model) = ("The type of this unit is not known yet, so there are no readings to offer. Name its type first.", null);
            return;
        }
        if (!ReadCircuit())
            return;
        var readings = BenchReadings.Of(Unit!, Model!, Shop);
        Trouble = readings.IsSound ? "" : $"The readings cannot be used: {readings.Problems[0].Wrong}.";
        if (!readings.IsSound)
            return;
        Readings = readings.Value;
        Meter = MeterInHand.Of(Unit!.Bench, Shop);
        Offers = ReadingOffer.All(Unit!, Model!, Readings!, Shop);
        Bands.Turn((Model!, Unit!.Bench, Meter.For(Quantity.Ohms)));
        // Once for an entry: a search that ended in trouble is not begun again by its own word of that.
        if (Answer.Latest?.Number != Unit.LastNumber && Answer.Progress is null && askedFor != Unit.LastNumber)
        {
            askedFor = Unit.LastNumber;
            Diagnoses.Ask(Id);
        }
    }

    /// <summary>Writes down how the bench stands now; refused when it cannot be so.</summary>
    protected async Task<string> SetBenchAsync(BenchState bench)
    {
        if (ReadingEntry.BenchProblem(bench) is { Length: > 0 } problem)
            return problem;
        if (bench != Unit!.Bench)
            await EnterAsync(new BenchSet(bench));
        return "";
    }

    /// <summary>The meter whose test leads are asked for before a reading; null for none.</summary>
    protected ShopMeter? LeadsToAsk(Expectation band) => TestLeads.ToAsk(band, Unit!.Bench, Shop);

    /// <summary>Keeps what was said of a meter, or that it was skipped, with the meter.</summary>
    protected async Task SaveMeterAsync(string meterId, MeterAnswer? answer)
    {
        await Bench.EditShopAsync(shop => TestLeads.Known(shop, meterId, answer));
        await UnitReadAsync();
        StateHasChanged();
    }

    /// <summary>Puts what was meant in the place of a slip.</summary>
    protected Task CorrectAsync(string readingId, Shown meant) =>
        ReadingEntry.Correct(Unit!, readingId, meant) is { } corrected ? EnterAsync(corrected) : Task.CompletedTask;

    /// <summary>The slips of the last answer that still hold.</summary>
    protected IEnumerable<SlipWords> Slips => Answer.Latest is { } latest && Unit is { } unit ? latest.SlipsOf(unit) : [];

    /// <summary>Those that it is sure of, and that nobody answered here.</summary>
    protected IEnumerable<SlipWords> SureSlips => Slips.Where(s => s.IsSure && LastOf(s.Spec.Id) is { } last && !kept.Contains(last.Id));

    /// <summary>It was no slip: nobody asks again on this screen.</summary>
    protected void Keep(SlipWords slip)
    {
        if (LastOf(slip.Spec.Id) is { } last)
            kept.Add(last.Id);
    }

    private Entry? LastOf(string readingId) => Unit!.CurrentReadings.LastOrDefault(r => r.Fact.ReadingId == readingId).Entry;

    /// <summary>Another meter is in the hand from now on.</summary>
    protected Task TakeUpAsync(string meterId) => SetBenchAsync(Unit!.Bench with { MeterId = meterId });

    /// <summary>Takes back the last reading or waiver; what it was, or null when there is none.</summary>
    protected async Task<Entry?> UndoAsync()
    {
        if (Unit is null || ReadingEntry.Undo(Unit) is not { } undo)
            return null;
        await EnterAsync(undo.Fact);
        return undo.Undone;
    }

    /// <summary>What a standing reading means, when its band is known.</summary>
    protected Meaning? MeaningOf(ReadingOffer offer) =>
        offer.Doubted.Length > 0 ? Meaning.OfDoubted(offer.Doubted, offer.Spec)
        : Bands.Of(offer.Spec.Id) is { } band ? ShownReading.MeaningOf(offer, band, Shop)
        : null;

    /// <inheritdoc/>
    public override void Dispose()
    {
        Diagnoses.Changed -= OnAnswer;
        base.Dispose();
        GC.SuppressFinalize(this);
    }

    private bool ReadCircuit()
    {
        var key = CircuitKey.Of(Unit!, Sheet!, Shop);
        if (Model is not null && key.Equals(circuit))
            return true;
        var own = OwnSheet.OnBench(Unit!, Sheet!, Shop);
        circuit = key;
        Model = own.IsSound ? new UnitModel(own.Value!) : null;
        Trouble = own.IsSound ? "" : $"The changes of this unit make no circuit: {own.Problems[0].Wrong}.";
        return own.IsSound;
    }

    private void OnAnswer(Guid unitId)
    {
        if (unitId == Id)
            _ = InvokeAsync(StateHasChanged);
    }
}
