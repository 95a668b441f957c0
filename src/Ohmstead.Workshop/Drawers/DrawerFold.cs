using System.Collections.Immutable;

namespace Ohmstead.Workshop.Drawers;

/// <summary>From the entries of the drawer and what was fitted, in the order of time, to the drawer as it stands.</summary>
internal sealed class DrawerFold(ImmutableArray<DrawerEntry> entries, ImmutableArray<FittedPart> fitted)
{
    private readonly Dictionary<Guid, Bin> bins = [];
    private readonly HashSet<Guid> gone = [];
    private readonly Dictionary<Guid, DrawerKit> kits = [];
    private readonly Dictionary<Guid, DrawerDonor> donors = [];
    private readonly AsideFold aside = new();
    private readonly Dictionary<Guid, List<(DateTimeOffset At, int Count)>> orders = [];

    public Drawer Answer()
    {
        ImmutableArray<DrawerEntry> inOrder = [.. entries.OrderBy(e => e.At).ThenBy(e => e.DocumentId, StringComparer.Ordinal)];
        var undone = Undone(inOrder);
        var steps = inOrder
            .Where(e => !undone.Contains(e.Id))
            .Select(e => (e.At, e.Id, Do: (Action)(() => Take(e))))
            .Concat(fitted.Select(f => (f.At, Id: f.Entry, Do: (Action)(() => Take(f)))));
        foreach (var step in steps.OrderBy(s => s.At).ThenBy(s => s.Id.ToString("D"), StringComparer.Ordinal))
            step.Do();
        return new(
            Named(isGone: false),
            [.. kits.Values.Where(k => !k.Needs.IsEmpty).OrderBy(k => k.Name, StringComparer.Ordinal)],
            [.. donors.Values.Where(d => !d.Left.IsEmpty || d.Words.Length > 0).OrderBy(d => d.Tag, StringComparer.Ordinal)],
            aside.Answer,
            inOrder,
            [.. undone],
            [.. fitted.OrderBy(f => f.At)]
        )
        {
            Removed = Named(isGone: true),
        };
    }

    private ImmutableArray<Bin> Named(bool isGone) =>
        [
            .. bins
                .Values.Where(b => b.Name.Length > 0 && gone.Contains(b.Id) == isGone)
                .Select(b => b with { SetAside = aside.Of(b.Id) })
                .OrderBy(b => b.Tag, StringComparer.Ordinal)
                .ThenBy(b => b.Name, StringComparer.Ordinal)
                .ThenBy(b => b.Since),
        ];

    private static HashSet<Guid> Undone(ImmutableArray<DrawerEntry> inOrder)
    {
        var undone = new HashSet<Guid>();
        foreach (var fact in inOrder.SelectMany(e => e.Facts).OfType<EntryUndone>())
            if (fact.IsUndone)
                undone.Add(fact.Entry);
            else
                undone.Remove(fact.Entry);
        return undone;
    }

    private void Take(DrawerEntry entry)
    {
        foreach (var fact in entry.Facts)
            Take(fact, entry);
    }

    private void Take(DrawerFact fact, DrawerEntry entry)
    {
        switch (fact)
        {
            case BinSaid said:
                Say(said, entry.At);
                break;
            case BinCounted counted:
                Put(counted.Bin, b => b with { Count = counted.Count });
                break;
            case PartsUsed used:
                Put(used.Bin, b => b with { Count = Less(b.Count, used.Count), Used = b.Used + used.Count });
                break;
            case PartsOrdered ordered:
                OrdersOf(ordered.Bin).Add((entry.At, ordered.Count));
                Put(ordered.Bin, Ordered);
                break;
            case PartsReceived received:
                Receive(received, entry.Id);
                break;
            default:
                TakeOther(fact);
                break;
        }
    }

    private void TakeOther(DrawerFact fact)
    {
        switch (fact)
        {
            case KitSaid kit:
                kits[kit.Kit] = new(kit.Kit, kit.Name, kit.Needs, kit.Planned);
                break;
            case KitTaken taken:
                SetAside(taken);
                break;
            case KitPutBack back:
                PutBack(back.Unit);
                break;
            case DonorSaid donor:
                donors[donor.Donor] = new(donor.Donor, donor.Tag, donor.Unit, donor.Left, donor.Words);
                break;
            case DonorGave gave:
                Give(gave);
                break;
        }
    }

    /// <summary>What lies beside the unit goes in first, the rest comes out of the bin; of a batch where the journal names one.</summary>
    private void Take(FittedPart part)
    {
        var (bin, count) = (part.From.Bin, part.From.Count);
        var beside = aside.Fit(part);
        Put(
            bin,
            b =>
                b with
                {
                    Count = Less(b.Count, count - beside),
                    Used = b.Used + count,
                    Batches = [.. b.Batches.Select(a => a.Id == part.From.Batch ? a with { Left = Less(a.Left, count) } : a)],
                }
        );
    }

    private void Say(BinSaid said, DateTimeOffset at)
    {
        var before = bins.GetValueOrDefault(said.Bin) ?? new Bin(said.Bin, "", "", "", "", 0, 0, null, at);
        bins[said.Bin] = before with
        {
            Tag = said.Tag ?? before.Tag,
            Name = said.Name ?? before.Name,
            Part = said.Part ?? before.Part,
            Photo = said.Photo ?? before.Photo,
            Price = said.Price ?? before.Price,
            LeadDays = said.LeadDays ?? before.LeadDays,
            PerYear = said.PerYear is { } perYear ? (perYear < 0 ? null : perYear) : before.PerYear,
        };
        if (said.IsGone == true)
            gone.Add(said.Bin);
        else if (said.IsGone == false)
            gone.Remove(said.Bin);
    }

    private void Receive(PartsReceived received, Guid entry)
    {
        var left = received.Count;
        var open = OrdersOf(received.Bin);
        while (left > 0 && open.Count > 0)
        {
            var part = Math.Min(left, open[0].Count);
            left -= part;
            if (part == open[0].Count)
                open.RemoveAt(0);
            else
                open[0] = (open[0].At, open[0].Count - part);
        }
        var batch = new DrawerBatch(entry, received.Bin, received.Supplier, received.Lot, received.Date, received.Count, received.Count);
        Put(received.Bin, b => Ordered(b with { Count = b.Count + received.Count, Batches = b.Batches.Add(batch) }));
    }

    private Bin Ordered(Bin bin) =>
        OrdersOf(bin.Id) is { Count: > 0 } open
            ? bin with
            {
                OnOrder = open.Sum(o => o.Count),
                OrderedAt = open[0].At,
            }
            : bin with
            {
                OnOrder = 0,
                OrderedAt = null,
            };

    private void SetAside(KitTaken taken)
    {
        aside.Put(taken, Plan(taken.Kit, -1));
        foreach (var part in taken.Parts)
            Put(part.Bin, b => b with { Count = Less(b.Count, part.Count) });
    }

    private void PutBack(Guid unit)
    {
        var (parts, whole) = aside.PutBack(unit);
        foreach (var (bin, count) in parts)
            Put(bin, b => b with { Count = b.Count + count });
        foreach (var kit in whole)
            Plan(kit, 1);
    }

    /// <summary>One job more or less of a kit is planned; false where there is no such kit, or none was planned.</summary>
    private bool Plan(Guid? id, int more)
    {
        if (id is not { } kit || !kits.TryGetValue(kit, out var known) || known.Planned + more < 0)
            return false;
        kits[kit] = known with { Planned = known.Planned + more };
        return true;
    }

    private void Give(DonorGave gave)
    {
        if (!donors.TryGetValue(gave.Donor, out var donor))
            return;
        // Two windows may each have taken the last one: only what was there is in the bin.
        var taken = Math.Min(gave.Count, donor.Left.Where(l => l.Bin == gave.Bin).Sum(l => l.Count));
        donors[gave.Donor] = donor with
        {
            Left = [.. donor.Left.Select(l => l.Bin == gave.Bin ? l with { Count = Less(l.Count, taken) } : l).Where(l => l.Count > 0)],
        };
        Put(gave.Bin, b => b with { Count = b.Count + taken });
    }

    /// <summary>Changes a bin that is known. No more of its batches are left than lie in it and beside units: the oldest went first.</summary>
    private void Put(Guid id, Func<Bin, Bin> change)
    {
        if (!bins.TryGetValue(id, out var bin))
            return;
        bin = change(bin);
        var over = bin.Batches.Sum(b => b.Left) - bin.Count - aside.Of(id);
        if (over > 0)
        {
            var batches = bin.Batches.ToBuilder();
            for (var n = 0; n < batches.Count && over > 0; n++)
            {
                var less = Math.Min(over, batches[n].Left);
                batches[n] = batches[n] with { Left = batches[n].Left - less };
                over -= less;
            }
            bin = bin with { Batches = batches.ToImmutable() };
        }
        bins[id] = bin;
    }

    private List<(DateTimeOffset At, int Count)> OrdersOf(Guid bin)
    {
        if (!orders.TryGetValue(bin, out var open))
            orders[bin] = open = [];
        return open;
    }

    /// <summary>More than was there cannot go: the count was wrong before.</summary>
    private static int Less(int count, int by) => Math.Max(0, count - by);
}
