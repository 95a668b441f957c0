using Npgsql;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.Storage.Databases;

/// <summary>
/// Hears on a connection of its own what other programs wrote to the database, and whether it answers at all. The database says it by
/// itself (a trigger of its tables), at the end of each transaction.
/// </summary>
internal sealed class PostgresNotices : IAsyncDisposable
{
    /// <summary>The name under which the triggers tell.</summary>
    public const string Channel = "ohmstead";

    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(300);

    private readonly PostgresAddress address;
    private readonly PostgresWords words;
    private readonly CancellationTokenSource closed = new();
    private readonly Task listening;
    private Action<StoreNews>? heard;
    private bool isAway;

    public PostgresNotices(PostgresAddress address)
    {
        (this.address, words) = (address, new PostgresWords(address.Name));
        listening = Task.Run(ListenAsync);
    }

    public void Add(Action<StoreNews>? hearer) => heard += hearer;

    public void Remove(Action<StoreNews>? hearer) => heard -= hearer;

    /// <summary>What a notice says; null when it is of this very program or not understood.</summary>
    internal static StoreNews? Read(string notice, string ownProgram) =>
        notice.Split(' ') switch
        {
            [var program, ..] when program == ownProgram => null,
            [_, "entries", var unit] when Guid.TryParse(unit, out var id) => new StoreNews(NewsOf.Entries, id, "", ""),
            [_, "found", var unit] when Guid.TryParse(unit, out var id) => new StoreNews(NewsOf.Found, id, "", ""),
            [_, "document", var kind] => new StoreNews(NewsOf.Document, Guid.Empty, kind, ""),
            _ => null,
        };

    private async Task ListenAsync()
    {
        while (!closed.IsCancellationRequested)
        {
            try
            {
                await ListenOnceAsync(closed.Token);
            }
            catch (Exception) when (closed.IsCancellationRequested)
            {
                return;
            }
            catch (Exception broken)
            {
                // Whatever it was: without an ear here nothing of the other benches would be shown any more.
                if (!isAway)
                    Tell(new StoreNews(NewsOf.Away, Guid.Empty, "", Words(broken)));
                isAway = true;
                await Task.Delay(Pause, closed.Token)
                    .ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
            }
        }
    }

    private async Task ListenOnceAsync(CancellationToken stop)
    {
        // A question now and then finds out that the way was cut without a word.
        var text = new NpgsqlConnectionStringBuilder(address.Text)
        {
            Pooling = false,
            KeepAlive = 3,
            CommandTimeout = 4,
        }.ConnectionString;
        await using var connection = new NpgsqlConnection(text);
        connection.Notification += (_, notice) =>
        {
            if (Read(notice.Payload, address.Program) is { } news)
                Tell(news);
        };
        await connection.OpenAsync(stop);
        await using (var listen = new NpgsqlCommand($"LISTEN {Channel}", connection))
            await listen.ExecuteNonQueryAsync(stop);
        if (isAway)
        {
            isAway = false;
            // What was written meanwhile, nobody told.
            Tell(new StoreNews(NewsOf.Back, Guid.Empty, "", ""));
        }
        while (true)
            await connection.WaitAsync(stop);
    }

    private string Words(Exception broken) => $"{words.Of(broken) ?? $"{address.Name}: {broken.Message}"}. Ohmstead tries again by itself";

    /// <summary>One who breaks on the news keeps them from nobody else, nor those that come after.</summary>
    private void Tell(StoreNews news)
    {
        foreach (var hearer in Delegate.EnumerateInvocationList(heard))
        {
            try
            {
                hearer(news);
            }
            catch (Exception)
            {
                continue;
            }
        }
    }

    public async ValueTask DisposeAsync()
    {
        await closed.CancelAsync();
        await listening;
        closed.Dispose();
    }
}
