using Microsoft.EntityFrameworkCore.Storage;
using Ohmstead.Storage.Rows;

namespace Ohmstead.Storage.Databases;

/// <summary>What lies under the store: all that differs between a file in the data folder and a database that several programs share.</summary>
internal interface IDatabase : IAsyncDisposable
{
    /// <summary>True where photos are kept in it, and the data folder holds copies of them only.</summary>
    bool KeepsPhotos { get; }

    /// <summary>How long a step is tried again, from its begin, before the person is told.</summary>
    TimeSpan Patience { get; }

    /// <summary>A context to read or write with.</summary>
    Task<WorkshopContext> ContextAsync(CancellationToken cancel);

    /// <summary>Begins to write: from here to the end of the transaction nobody else does, in whichever program.</summary>
    Task<IDbContextTransaction> BeginAsync(WorkshopContext context, CancellationToken cancel);

    /// <summary>The units that may have all the words, as the database can say without looking at each: all that do, and few others.</summary>
    /// <param name="words">As <see cref="Ohmstead.Workshop.Stores.SearchText"/> has them.</param>
    IQueryable<UnitRow> MayHave(WorkshopContext context, IReadOnlyList<string> words);

    /// <summary>What a failure means to the person at the bench; null when it is a fault of the program.</summary>
    string? Words(Exception broken);

    /// <summary>True when the same step may succeed a moment later: a server that starts again, a network that was cut.</summary>
    bool MayPass(Exception broken);
}
