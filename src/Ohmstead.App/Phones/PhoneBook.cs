using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.App.Phones;

/// <summary>
/// Keys that were shown and phones that came in by them. Only hashes are kept, and only as long as the program runs: starting it
/// anew forgets every phone.
/// </summary>
internal sealed class PhoneBook(TimeProvider time, Func<Guid> newId)
{
    /// <summary>How long a key is good: enough to fetch the phone from the kitchen.</summary>
    public static readonly TimeSpan KeyLife = TimeSpan.FromMinutes(5);

    /// <summary>A pairing lasts a working day.</summary>
    public static readonly TimeSpan PhoneLife = TimeSpan.FromHours(12);

    private readonly Lock door = new();
    private ImmutableDictionary<string, (Guid UnitId, DateTimeOffset Until)> keys = ImmutableDictionary<
        string,
        (Guid, DateTimeOffset)
    >.Empty;
    private ImmutableDictionary<string, PairedPhone> phones = ImmutableDictionary<string, PairedPhone>.Empty;

    /// <summary>A phone came, went or was given another unit. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>The phones that are let in now, first come first.</summary>
    public IReadOnlyList<PairedPhone> Phones
    {
        get
        {
            lock (door)
                return [.. phones.Values.Where(IsLetIn).OrderBy(p => p.At).ThenBy(p => p.Id)];
        }
    }

    /// <summary>Makes a key that lets one phone in, once, to one unit.</summary>
    public PhoneKey NewKey(Guid unitId)
    {
        var (text, until) = (Secret(), time.GetUtcNow() + KeyLife);
        lock (door)
            keys = keys.RemoveRange(keys.Where(k => k.Value.Until <= time.GetUtcNow()).Select(k => k.Key)).Add(Hash(text), (unitId, until));
        return new PhoneKey(text, until);
    }

    /// <summary>Takes back a key that is no longer shown.</summary>
    public void Forget(PhoneKey key)
    {
        lock (door)
            keys = keys.Remove(Hash(key.Text));
    }

    /// <summary>Lets a phone in by its key, which is used up by this.</summary>
    /// <returns>The secret for its cookie; null when the key is not good.</returns>
    public string? LetIn(string key, string kind)
    {
        var secret = Secret();
        lock (door)
        {
            if (!keys.TryGetValue(Hash(key), out var meant))
                return null;
            keys = keys.Remove(Hash(key));
            if (meant.Until <= time.GetUtcNow())
                return null;
            phones = phones.Add(Hash(secret), new PairedPhone(newId(), meant.UnitId, kind, time.GetUtcNow()));
        }
        Changed?.Invoke();
        return secret;
    }

    /// <summary>The phone whose cookie this is, or null.</summary>
    public PairedPhone? Find(string? secret)
    {
        if (string.IsNullOrEmpty(secret))
            return null;
        lock (door)
            return phones.TryGetValue(Hash(secret), out var phone) && IsLetIn(phone) ? phone : null;
    }

    /// <summary>Gives a phone another unit to see.</summary>
    public void Turn(Guid phoneId, Guid unitId) => Replace(phoneId, p => p with { UnitId = unitId });

    /// <summary>Shuts a phone out, at once and for good.</summary>
    public void Revoke(Guid phoneId) => Replace(phoneId, _ => null);

    private void Replace(Guid phoneId, Func<PairedPhone, PairedPhone?> by)
    {
        lock (door)
        {
            foreach (var (hash, phone) in phones.Where(p => p.Value.Id == phoneId))
                phones = by(phone) is { } other ? phones.SetItem(hash, other) : phones.Remove(hash);
        }
        Changed?.Invoke();
    }

    private bool IsLetIn(PairedPhone phone) => phone.At + PhoneLife > time.GetUtcNow();

    // 128 bits that nobody can guess; looked up by their hash, so that how long the search takes tells nothing.
    private static string Secret() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    private static string Hash(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}

/// <summary>A phone that scanned a key.</summary>
/// <param name="UnitId">The one unit that it sees.</param>
/// <param name="Kind">What it says it is: "a phone", "a tablet".</param>
internal sealed record PairedPhone(Guid Id, Guid UnitId, string Kind, DateTimeOffset At);

/// <summary>A key as the screen shows it.</summary>
/// <param name="Text">What the QR code ends in.</param>
internal sealed record PhoneKey(string Text, DateTimeOffset Until);
