using System.Collections.Concurrent;
using Ohmstead.App.Queue;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Background;

/// <summary>The bands of a unit's readings under the conditions that are really so, worked out beside the screen as they are wanted.</summary>
internal sealed class ExpectedBands
{
    private readonly ConcurrentDictionary<string, Expectation> bands = new(StringComparer.Ordinal);
    private object key = new();

    /// <summary>The band of a reading, when it is known.</summary>
    public Expectation? Of(string readingId) => bands.GetValueOrDefault(readingId);

    /// <summary>The band of a reading, now.</summary>
    public Expectation Get(UnitModel model, ReadingOffer offer, Meter meter) =>
        bands.GetOrAdd(offer.Spec.Id, _ => Expectation.Of(model, offer.Spec, offer.State, meter));

    /// <summary>Forgets the bands of other conditions than these.</summary>
    public void Turn(object conditions)
    {
        if (conditions.Equals(key))
            return;
        key = conditions;
        bands.Clear();
    }

    /// <summary>Works out what is missing, in this order; says so after each.</summary>
    public async Task FillAsync(WorkQueue work, UnitModel model, IEnumerable<ReadingOffer> offers, Meter meter, Func<Task> arrived)
    {
        var of = key;
        foreach (var offer in offers.Where(o => !bands.ContainsKey(o.Spec.Id)))
        {
            var band = await work.RunAsync("A band", () => Expectation.Of(model, offer.Spec, offer.State, meter));
            if (!of.Equals(key))
                return;
            bands[offer.Spec.Id] = band;
            await arrived();
        }
    }
}
