using Ohmstead.Workshop.Units;

namespace Ohmstead.Storage;

/// <summary>
/// Units as last read from their journals, those last used: whoever asks after an entry gets what the entry itself made. A journal
/// only grows, so a unit and the number of its last entry say everything: what is kept under an older number is not used.
/// </summary>
/// <param name="most">Units that are kept.</param>
internal sealed class KeptUnits(int most = KeptUnits.OnTheBench)
{
    /// <summary>What is worked on at a time, with some to spare.</summary>
    private const int OnTheBench = 16;

    private readonly Dictionary<Guid, (BenchUnit Unit, long Used)> units = [];
    private readonly Lock door = new();
    private long used;

    /// <summary>The unit as it is after this entry; null where it is not kept so.</summary>
    public BenchUnit? Find(Guid id, int lastNumber)
    {
        lock (door)
        {
            if (!units.TryGetValue(id, out var kept) || kept.Unit.LastNumber != lastNumber)
                return null;
            units[id] = kept with { Used = ++used };
            return kept.Unit;
        }
    }

    /// <summary>Keeps a unit whose entries are all on the disk.</summary>
    public BenchUnit Keep(BenchUnit unit)
    {
        lock (door)
        {
            units[unit.Id] = (unit, ++used);
            if (units.Count > most)
                units.Remove(units.MinBy(u => u.Value.Used).Key);
            return unit;
        }
    }
}
