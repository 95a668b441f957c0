using System.Net.Sockets;
using Npgsql;

namespace Ohmstead.Storage.Databases;

/// <summary>What a failure of the club's database means to the person at the bench.</summary>
/// <param name="name">The database as it is told of.</param>
internal sealed class PostgresWords(string name)
{
    // In the middle of writing for too long without a word (idle_in_transaction_session_timeout); the package has no name for it.
    private const string IdleTooLong = "25P03";

    /// <summary>In words; null when it is a fault of the program.</summary>
    public string? Of(Exception broken) =>
        Find<PostgresException>(broken) is { } said ? Of(said)
        : Find<TimeoutException>(broken) is not null ? Sentence($"{name} is too slow, or the network is")
        : Find<NpgsqlException>(broken) is { } failure
            ? IsRefusal(failure) ? Sentence($"{name} asks for a password. Put it into the file .pgpass of this account")
                : Sentence($"{name} does not answer. Look whether its machine is on and the network is up")
        : Find<SocketException>(broken) is not null ? Sentence($"{name} cannot be reached. Look whether the network is up")
        : null;

    /// <summary>True when the same may succeed a moment later.</summary>
    public static bool MayPass(Exception broken) =>
        Find<PostgresException>(broken) is { } said
            ? said.SqlState is PostgresErrorCodes.TooManyConnections or PostgresErrorCodes.LockNotAvailable or IdleTooLong
                || said.SqlState.StartsWith("57P", StringComparison.Ordinal)
                || said.SqlState.StartsWith("08", StringComparison.Ordinal)
                || said.SqlState.StartsWith("40", StringComparison.Ordinal)
        : Find<NpgsqlException>(broken) is { } failure ? !IsRefusal(failure)
        : Find<SocketException>(broken) is not null;

    private string? Of(PostgresException said) =>
        said.SqlState switch
        {
            PostgresErrorCodes.DiskFull => Sentence($"the disk of {name} is full. Free some space on its machine"),
            PostgresErrorCodes.ReadOnlySqlTransaction => Sentence(
                $"{name} takes nothing new just now: it is read only. Ask whoever looks after it to open it for writing"
            ),
            PostgresErrorCodes.TooManyConnections => Sentence($"too many programs are on {name}. Close Ohmstead where it is not needed"),
            PostgresErrorCodes.InvalidPassword or PostgresErrorCodes.InvalidAuthorizationSpecification => Sentence(
                $"{name} does not let this account in. Look at the name and at the password in the file .pgpass"
            ),
            PostgresErrorCodes.InvalidCatalogName => Sentence($"{name} is not there. Make it first, or look at its name"),
            PostgresErrorCodes.InsufficientPrivilege => Sentence(
                $"this account may not write to {name}. Ask whoever looks after it for the right to"
            ),
            PostgresErrorCodes.QueryCanceled or PostgresErrorCodes.LockNotAvailable => Sentence($"{name} is too slow"),
            PostgresErrorCodes.DataCorrupted or PostgresErrorCodes.IndexCorrupted => Sentence(
                $"{name} is damaged ({said.MessageText}). Bring back a backup into a new one"
            ),
            PostgresErrorCodes.CannotConnectNow => Sentence($"{name} is starting"),
            _ when MayPass(said) => Sentence($"{name} is being shut down or started again"),
            _ => null,
        };

    // The server asks and nobody has an answer: no trouble of the network.
    private static bool IsRefusal(NpgsqlException failure) => failure.Message.Contains("password", StringComparison.OrdinalIgnoreCase);

    private static string Sentence(string words) => $"{char.ToUpperInvariant(words[0])}{words[1..]}";

    private static T? Find<T>(Exception? broken)
        where T : Exception
    {
        for (; broken is not null; broken = broken.InnerException)
            if (broken is T found)
                return found;
        return null;
    }
}
