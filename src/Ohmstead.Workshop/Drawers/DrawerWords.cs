using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>What was entered at the drawer, in words, and what stands on a bin's front.</summary>
public static class DrawerWords
{
    /// <summary>One line of the log.</summary>
    public static string Of(DrawerEntry entry, Drawer drawer) =>
        string.Join("; ", entry.Facts.Select(f => Of(f, drawer)).Where(w => w.Length > 0).DefaultIfEmpty("An entry of a later version"));

    /// <summary>The note on a bin's front beside its count: what is to be ordered or due, or empty.</summary>
    public static string Note(Bin bin, DrawerOrders orders, TimeZoneInfo zone) =>
        orders.Lines.FirstOrDefault(l => l.Bin.Id == bin.Id) is { } line ? $"order {ValueText.Plain(line.Count)}"
        : bin.DueAt is { } due ? $"due {TimeZoneInfo.ConvertTime(due, zone).ToString("MMM d", CultureInfo.InvariantCulture)}"
        : "";

    /// <summary>A sum of money, to the cent.</summary>
    public static string Money(decimal sum, Shop shop) =>
        shop.Money is "USD" or "$"
            ? sum.ToString("'$'0.00", CultureInfo.InvariantCulture)
            : $"{sum.ToString("0.00", CultureInfo.InvariantCulture)} {shop.Money}";

    /// <summary>Parts by count and name: "1 × Roller, carbon; 2 × Grommet".</summary>
    public static string Counts(ImmutableArray<BinCount> counts, Drawer drawer) =>
        string.Join("; ", counts.Select(c => $"{ValueText.Plain(c.Count)} × {Name(c.Bin, drawer)}"));

    /// <summary>A batch with its date: "Acme, lot 41, Nov 3, 2026".</summary>
    public static string Of(DrawerBatch batch)
    {
        var date = batch.Date.ToString("MMM d, yyyy", CultureInfo.InvariantCulture);
        return batch.Name.Length == 0 ? $"batch of {date}" : $"{batch.Name}, {date}";
    }

    private static string Of(DrawerFact fact, Drawer drawer) =>
        fact switch
        {
            BinSaid { IsGone: true } said => $"{Name(said.Bin, drawer)}: bin removed",
            BinSaid { Photo: not null } said => $"{Name(said.Bin, drawer)}: photo",
            BinSaid said => $"{said.Name ?? Name(said.Bin, drawer)}: {(said.Name is null ? "changed" : "bin")}",
            BinCounted counted => $"{Name(counted.Bin, drawer)}: counted {ValueText.Plain(counted.Count)}",
            PartsUsed used =>
                $"{Name(used.Bin, drawer)}: {ValueText.Plain(used.Count)} used{(used.Words.Length > 0 ? $", {used.Words}" : "")}",
            PartsOrdered ordered =>
                $"{Name(ordered.Bin, drawer)}: {ValueText.Plain(ordered.Count)} ordered{(ordered.Supplier.Length > 0 ? $" from {ordered.Supplier}" : "")}",
            PartsReceived received =>
                $"{Name(received.Bin, drawer)}: {ValueText.Plain(received.Count)} came in, {Of(new DrawerBatch(default, received.Bin, received.Supplier, received.Lot, received.Date, 0, 0))}",
            KitSaid { Needs.IsEmpty: true } kit => $"Kit removed: {kit.Name}",
            KitSaid kit => $"Kit: {kit.Name}",
            KitTaken taken => $"Taken out for {taken.Tag}: {Counts(taken.Parts, drawer)}",
            KitPutBack back => $"Put back from {back.Tag}",
            DonorSaid { Left.IsEmpty: true, Words: "" } donor => $"Donor {donor.Tag}: nothing left",
            DonorSaid donor => $"Donor {donor.Tag}",
            DonorGave gave => $"{Name(gave.Bin, drawer)}: {ValueText.Plain(gave.Count)} from a donor",
            EntryUndone undone => undone.IsUndone ? "An entry undone" : "An entry counts again",
            _ => "",
        };

    private static string Name(Guid bin, Drawer drawer) =>
        drawer.Find(bin)?.Name
        ?? drawer.Entries.SelectMany(e => e.Facts).OfType<BinSaid>().LastOrDefault(b => b.Bin == bin && b.Name is not null)?.Name
        ?? "a part";
}
