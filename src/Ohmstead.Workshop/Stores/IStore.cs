using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Job;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Merging;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Stores;

/// <summary>Where the workshop is kept. Every method that writes returns when the data is on the disk, not before.</summary>
public interface IStore
{
    /// <summary>What other programs wrote, and whether the store answers: only where several share it. Called from any thread.</summary>
    event Action<StoreNews>? News
    {
        add { }
        remove { }
    }

    /// <summary>Adds entries to a unit's journal, or begins one (the first fact is <see cref="TakenIn"/>).</summary>
    /// <param name="seenNumber">Number of the last entry the writer had seen; 0 for a new unit.</param>
    /// <returns>The numbered entries; and those that others had written since <paramref name="seenNumber"/>, which the writer is told of. Both stay.</returns>
    Task<Appended> AppendAsync(Guid unitId, int seenNumber, IReadOnlyList<NewEntry> entries, CancellationToken cancel);

    /// <summary>Adds entries to many units, all or none: what comes in from a zip.</summary>
    /// <exception cref="JournalRefused">A unit that is not there would begin without <see cref="TakenIn"/>, or an entry stands in another unit.</exception>
    Task AppendAllAsync(IReadOnlyList<UnitEntries> units, CancellationToken cancel);

    /// <summary>The mark of this copy of the workshop, which its entries carry.</summary>
    string Bench { get; }

    /// <summary>
    /// Entries of another bench come to a unit's journal, or begin one, in the order of <see cref="MergedJournal"/>: all or none, in one
    /// transaction.
    /// </summary>
    /// <returns>How many were not here before.</returns>
    /// <exception cref="JournalRefused">As of <see cref="AppendAllAsync"/>.</exception>
    Task<int> MergeAsync(Guid unitId, IReadOnlyList<NewEntry> entries, CancellationToken cancel);

    /// <summary>Versions of documents that were made at another bench come beside those here, all or none; the last by time counts.</summary>
    /// <returns>How many were not here before.</returns>
    Task<int> MergeDocumentsAsync(IReadOnlyList<Document> versions, CancellationToken cancel);

    /// <summary>Every version of every document of a kind.</summary>
    Task<IReadOnlyList<Document>> VersionsAsync(string kind, CancellationToken cancel);

    /// <summary>The units of which two benches say what cannot both be so, and how often.</summary>
    Task<IReadOnlyList<(Guid UnitId, int Count)>> ContradictedAsync(CancellationToken cancel);

    /// <summary>The unit with what the last finished diagnosis doubts of it, or null when there is none with this id.</summary>
    Task<BenchUnit?> ReadAsync(Guid unitId, CancellationToken cancel);

    /// <summary>Cards of all units, those last touched first.</summary>
    Task<IReadOnlyList<UnitCard>> CardsAsync(bool withHandedBack, CancellationToken cancel);

    /// <summary>The first cards of the units on the bench, in the order of <see cref="HalfHour"/>, and how many there are.</summary>
    /// <param name="most">Cards at most.</param>
    Task<FirstCards> OnBenchAsync(int most, CancellationToken cancel);

    /// <summary>The first cards of the units that were handed back, those last touched first, and how many there are.</summary>
    /// <param name="most">Cards at most.</param>
    Task<FirstCards> HandedBackAsync(int most, CancellationToken cancel);

    /// <summary>Cards of units on the bench whose tag, in small or capital letters (of English), another one there has too.</summary>
    Task<IReadOnlyList<UnitCard>> TwiceTaggedAsync(CancellationToken cancel);

    /// <summary>How many units there are of each type, by the id of its sheet; those without a type under none.</summary>
    /// <param name="without">Units of this owner do not count.</param>
    Task<IReadOnlyDictionary<string, int>> CountOfTypesAsync(string without, CancellationToken cancel);

    /// <summary>The next thing to do on a unit, the same that its card in the lists shows; null when there is no such unit.</summary>
    Task<NextThing?> NextAsync(Guid unitId, CancellationToken cancel);

    /// <summary>
    /// Keeps what a finished diagnosis doubts of a unit, and puts what it found to be next onto the card, this unless the journal has
    /// grown past <paramref name="seenNumber"/>.
    /// </summary>
    Task SaveFoundAsync(Guid unitId, int seenNumber, NextThing next, UnitDoubts doubts, CancellationToken cancel);

    /// <summary>
    /// The parts of the drawer in all units, those handed back too, as their journals tell it now: of each unit in the order of its journal.
    /// </summary>
    Task<IReadOnlyList<FittedPart>> FittedAsync(CancellationToken cancel);

    /// <summary>Units in whose tag, owner, kind or entries all words occur.</summary>
    Task<IReadOnlyList<Hit>> SearchAsync(string words, int most, CancellationToken cancel);

    /// <summary>Kinds of which there are documents.</summary>
    Task<IReadOnlyList<string>> DocumentKindsAsync(CancellationToken cancel);

    /// <summary>The newest text of a document, or null.</summary>
    Task<Document?> ReadDocumentAsync(string kind, string id, CancellationToken cancel);

    /// <summary>The newest version of every document of a kind, by id.</summary>
    Task<IReadOnlyList<Document>> DocumentsAsync(string kind, CancellationToken cancel);

    /// <summary>
    /// The newest version of a type sheet, as it was read once: the same object as long as that version is the newest. Null when there
    /// is none with this id, or it has problems.
    /// </summary>
    Task<TypeSheet?> SheetAsync(string id, CancellationToken cancel);

    /// <summary>A version of a type sheet, the newest where that one is not there; null as above.</summary>
    /// <param name="version">0 for the newest.</param>
    Task<TypeSheet?> SheetAsync(string id, int version, CancellationToken cancel);

    /// <summary>What is kept in memory beside the disk.</summary>
    IReadOnlyList<CacheCount> Caches { get; }

    /// <summary>Saves a new version of a document; earlier versions stay.</summary>
    /// <param name="seenVersion">The version that was edited; 0 for a new one. When another stands there, nothing is written.</param>
    Task<DocumentSaved> SaveDocumentAsync(
        string kind,
        string id,
        int seenVersion,
        string text,
        DateTimeOffset at,
        CancellationToken cancel
    );
}

/// <summary>What became of an append.</summary>
/// <param name="Written">The entries with their numbers (those already there under the same id keep theirs).</param>
/// <param name="Between">What others had written since the writer looked.</param>
public sealed record Appended(IReadOnlyList<Entry> Written, IReadOnlyList<Entry> Between);

/// <summary>The first of a list.</summary>
/// <param name="Cards">In the order of the list.</param>
/// <param name="Count">How many the whole list has.</param>
public sealed record FirstCards(IReadOnlyList<UnitCard> Cards, int Count);

/// <summary>A unit that a search found.</summary>
/// <param name="Where">The words around the hit.</param>
public sealed record Hit(UnitCard Card, string Where);

/// <summary>A text kept in versions: a type sheet ("sheet"), the shop's settings ("shop"), an entry of the drawer ("drawer", one version).</summary>
public sealed record Document(string Kind, string Id, int Version, DateTimeOffset At, string Text);

/// <summary>What became of saving a document.</summary>
/// <param name="IsSaved">False when another version had been saved in between.</param>
/// <param name="Newest">The version that stands now.</param>
public sealed record DocumentSaved(bool IsSaved, Document Newest);
