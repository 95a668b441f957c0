using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Stores;
using Ohmstead.Storage;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Perf.Benches;

/// <summary>What lies on the benches: drawn units of the sample type, some faults in each.</summary>
/// <param name="Ids">One for every bench.</param>
/// <param name="Ohms">About what its meter shows for the reading.</param>
/// <param name="Reading">The reading that is entered over and over.</param>
internal sealed record ClubUnits(IReadOnlyList<Guid> Ids, double[] Ohms, string Reading)
{
    private const int ReadBefore = 20;

    /// <summary>Units of other days, and one for every bench with readings of a drawn unit.</summary>
    public static async Task<ClubUnits> FillAsync(Store store, int benches, int otherUnits)
    {
        Console.Error.WriteLine("filling");
        var sheet = RepositoryRoot.Sample;
        var text = await File.ReadAllTextAsync(RepositoryRoot.SamplePath);
        await new FilledStore(store, seed: 20, photosAUnit: 2).FillAsync(
            sheet.Id,
            text,
            [.. sheet.Readings.Select(r => r.Id)],
            CancellationToken.None,
            otherUnits
        );
        var reading = sheet.Readings.First(r => r.Quantity == Quantity.Ohms).Id;
        var (units, ohms) = (new List<Guid>(), new List<double>());
        for (var n = 1; units.Count < benches; n++)
        {
            var drawn = DrawnUnit.Draw(new UnitModel(sheet), n).Readings.Readings;
            if (drawn.First(r => r.Spec.Id == reading) is not { Outcome: Outcome.Value } first)
                continue;
            var id = Guid.CreateVersion7();
            Fact[] facts =
            [
                new TakenIn(FormattableString.Invariant($"C-{n}"), sheet.Id, "", ""),
                .. drawn.Take(ReadBefore).Select(EntryFigures.Fact),
            ];
            await store.AppendAsync(
                id,
                0,
                [.. facts.Select(f => new NewEntry(Guid.CreateVersion7(), TimeProvider.System.GetUtcNow(), "bench", f))],
                CancellationToken.None
            );
            units.Add(id);
            ohms.Add(first.Value);
        }
        return new(units, [.. ohms], reading);
    }
}
