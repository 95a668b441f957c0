using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Journal;

namespace Ohmstead.Perf.Stores;

/// <summary>A drawer of many years beside a filled workshop: bins with batches, kits, donors, and a part of it in each unit that went back.</summary>
internal sealed class FilledDrawer(Store store, IReadOnlyList<Guid> units)
{
    public const int Bins = 5000;
    private const int Kits = 20;
    private const int Donors = 20;

    private static readonly string[] Names =
    [
        "Roller, carbon",
        "Roller pin",
        "Whistle disc",
        "Pilot lamp 14 V",
        "Cord, 18 AWG",
        "Grommet",
        "Knob",
    ];
    private static readonly DateTimeOffset Began = new(2020, 1, 6, 8, 0, 0, TimeSpan.Zero);
    private int entries;

    /// <summary>Fills it, and decides about a part of each unit on the bench, so that each has a plan.</summary>
    public async Task FillAsync(CancellationToken cancel)
    {
        for (var n = 0; n < Bins; n++)
            await EnterAsync(
                n,
                cancel,
                new BinSaid(Bin(n))
                {
                    Tag = n.ToString("D4", CultureInfo.InvariantCulture),
                    Name = n < Names.Length ? Names[n] : $"{Names[n % Names.Length]} {n.ToString(CultureInfo.InvariantCulture)}",
                    Price = 1.6m,
                    LeadDays = 5 + (n % 30),
                    PerYear = n % 3 == 0 ? n % 25 : null,
                },
                new BinCounted(Bin(n), n % 9),
                new PartsReceived(Bin(n), 3, "A supplier", FormattableString.Invariant($"{n % 50}"), new DateOnly(2024, 1, 1 + (n % 28)))
            );
        for (var n = 0; n < Kits; n++)
            await EnterAsync(
                Bins,
                cancel,
                new KitSaid(Id(2, n), FormattableString.Invariant($"Job {n}"), [new(Bin(n), 1), new(Bin(n + 7), 2)], n % 3)
            );
        for (var n = 0; n < Donors; n++)
            await EnterAsync(
                Bins,
                cancel,
                new DonorSaid(Id(3, n), FormattableString.Invariant($"D-{n}"), null, [new(Bin(n * 11), 2)], "cover")
            );
        await store.AppendAllAsync([.. units.Select((u, n) => new UnitEntries(u, [Entry(u, n)]))], cancel);
    }

    private NewEntry Entry(Guid unit, int number)
    {
        var (bin, at) = (number % Bins, Began.AddHours((number * 40) + 39));
        Fact fact =
            number % 10 == 0
                ? new PartDecided("roller-left", "worn", DecidedAct.Replace, "", 5.10m, null, "7.0 mm of 9.5", [])
                : new PartChanged("roller-left", PartChange.Renewed, null, "")
                {
                    From = new(Bin(bin), Batch(bin), 1, Names[bin % Names.Length], "A supplier, lot 1"),
                };
        return new(new Guid(unit.GetHashCode(), 7, 0, new byte[8]), at, "bench", fact);
    }

    private async Task EnterAsync(int number, CancellationToken cancel, params DrawerFact[] facts)
    {
        var entry = new DrawerEntry(number < Bins ? Batch(number) : Id(4, entries), Began.AddMinutes(entries++), "bench", [.. facts]);
        await store.SaveDocumentAsync(DrawerEntry.DocumentKind, entry.DocumentId, 0, entry.Write(), entry.At, cancel);
    }

    private static Guid Bin(int number) => Id(0, number);

    private static Guid Batch(int number) => Id(1, number);

    private static Guid Id(short kind, int number) => new(number, kind, 0x5d, new byte[8]);
}
