using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>A unit that a predictor assumes is its holder's: what it shows hangs on its own faults only.</summary>
public class AssumedUnitTests
{
    private static readonly BenchUnit Twin = new(Reference.Twin160);

    private readonly Predictor predictor = NewPredictor();

    private static Predictor NewPredictor() =>
        new(
            new ReadingSet(
                Twin.Model,
                new FaultCatalogue(Twin.Model),
                new[] { "ohms-right", "right-load", "right-first-dc" }
                    .Select(id => Twin.Model.Sheet.FindReading(id)!)
                    .Select(r => (r, r.State)),
                Meter.Usual
            )
        );

    /// <summary>A worn roller, a disc the other way round, half of the line: each alone, and each in the midst of the others.</summary>
    [Fact]
    public void What_is_assumed_meanwhile_of_others_changes_nothing_in_it()
    {
        double[] factors = [.. Twin.Model.Parameters.Select(_ => 1.2)];
        Func<Predictor, AssumedUnit>[] units =
        [
            p => p.Assume(),
            p => p.Assume(Twin.Faults("roller-right:worn=8")),
            p => p.Assume(Twin.Faults("disc-right:reversed")),
            p => p.Assume([], factors),
        ];
        var alone = units
            .Select(make =>
            {
                using var unit = make(NewPredictor());
                return Shown(unit);
            })
            .ToArray();
        var held = units.Select(make => make(predictor)).ToArray();
        for (var n = 0; n < held.Length; n++)
            Assert.Equal(alone[n], Shown(held[n]));
        Assert.Equal(held.Length, alone.DistinctBy(a => string.Join(' ', a)).Count());
        Assert.Equal(alone[0], Shown(held[0]));
    }

    [Fact]
    public void Once_it_is_disposed_of_it_shows_nothing_more()
    {
        var unit = predictor.Assume();
        unit.Dispose();
        Assert.Throws<ObjectDisposedException>(() => unit.Value(0));
    }

    [Fact]
    public void Disposed_of_twice_its_numbers_are_not_handed_to_two_holders()
    {
        var gone = predictor.Assume();
        gone.Dispose();
        gone.Dispose();
        using var sound = predictor.Assume();
        var before = Shown(sound);
        using var worn = predictor.Assume(Twin.Faults("roller-right:worn=8"));
        Assert.Equal(before, Shown(sound));
    }

    private static double?[] Shown(AssumedUnit unit) => [.. Enumerable.Range(0, 3).Select(unit.Value)];
}
