namespace Ohmstead.Workshop.Journal;

/// <summary>A part that came out of the shop's drawer. Name and batch are written out: the journal is read where that drawer is not.</summary>
/// <param name="Bin">The bin it lay in.</param>
/// <param name="Batch">The batch it came in with; null where that is not known.</param>
/// <param name="Count">How many went in.</param>
/// <param name="Name">What the bin was called.</param>
/// <param name="Lot">Supplier and lot of the batch, in words; empty where that is not known.</param>
public sealed record FromDrawer(Guid Bin, Guid? Batch, int Count, string Name, string Lot)
{
    /// <summary>In words, as they stand behind what was done: "Roller, carbon, Acme lot 41".</summary>
    public string Words => Lot.Length == 0 ? Name : $"{Name}, {Lot}";
}
