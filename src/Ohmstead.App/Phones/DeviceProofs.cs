using System.Collections.Concurrent;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.App.Phones;

/// <summary>
/// What a device must prove beside its cookie: that it has the key made at its pairing, which no script and no person can take out of its
/// browser. It signs a challenge; each is good once, for one use, for a short time. By that it gets a pass for pages, which it renews while
/// it is open, or a ticket for one live connection.
/// </summary>
internal sealed class DeviceProofs(TimeProvider time)
{
    /// <summary>How long a challenge waits for its signature, and a ticket for its connection.</summary>
    public static readonly TimeSpan ChallengeLife = TimeSpan.FromSeconds(30);

    /// <summary>How long pages are shown after a proof. A page that is open proves anew every minute.</summary>
    public static readonly TimeSpan PassLife = TimeSpan.FromMinutes(5);

    /// <summary>The use of a proof that gives a pass for pages.</summary>
    public const string Page = "page";

    /// <summary>The use of a proof that gives a ticket for one live connection.</summary>
    public const string Live = "live";

    /// <summary>More passes or tickets are in use by nobody honest: the oldest of that use go.</summary>
    private const int MostOfUse = 32;

    /// <summary>A device signs no more challenges while one waits.</summary>
    private const int MostSigned = 256;
    private const string Signed = "signed";

    private readonly ConcurrentDictionary<string, Given> given = new(StringComparer.Ordinal);
    private readonly byte[] own = RandomNumberGenerator.GetBytes(HMACSHA256.HashSizeInBytes);

    /// <summary>
    /// A new challenge for a device. Nothing of it is kept until it is signed: whoever has the cookie alone can ask for as many as he
    /// likes and takes nothing from the device that has the key.
    /// </summary>
    public string Challenge(Guid deviceId)
    {
        var asked = string.Create(CultureInfo.InvariantCulture, $"{Secret.New()}.{(time.GetUtcNow() + ChallengeLife).UtcTicks}");
        return $"{asked}.{SealOf(asked, deviceId)}";
    }

    /// <summary>Takes the signature of a challenge.</summary>
    /// <param name="use"><see cref="Page"/> or <see cref="Live"/>.</param>
    /// <param name="host">The address that was asked, with its port: a signature for another one is none here.</param>
    /// <param name="address">Where the device asks from: what it gets counts from there.</param>
    /// <returns>The pass or the ticket; null when nothing was proved: another challenge may be signed then.</returns>
    public string? Prove(Device device, string use, string host, DeviceAnswer answer, string address)
    {
        return
            use is Page or Live
            && EndOf(answer.Challenge, device.Id) is { } until
            && DeviceKey.IsSigned(device.Key, answer.Signature, $"ohmstead\n{use}\n{host}\n{answer.Challenge}")
            && IsFirst(answer.Challenge, device.Id, until)
            ? Give(use, device.Id, address, use == Page ? PassLife : ChallengeLife)
            : null;
    }

    /// <summary>A pass for a device that has just been paired: it proved its key then.</summary>
    public string Pass(Guid deviceId, string address) => Give(Page, deviceId, address, PassLife);

    /// <summary>True for a pass of this device, from this address, whose time is not over.</summary>
    public bool IsPass(string? pass, Guid deviceId, string address) =>
        !string.IsNullOrEmpty(pass)
        && given.TryGetValue(Secret.Hash(pass), out var found)
        && (found.Use, found.DeviceId, found.Address) == (Page, deviceId, address)
        && found.Until > time.GetUtcNow();

    /// <summary>True once for a ticket of this device, from this address.</summary>
    public bool UseTicket(string? ticket, Guid deviceId, string address) => Take(Live, ticket, deviceId, address);

    /// <summary>Nothing of what a device proved counts any more.</summary>
    public void Forget(Guid deviceId)
    {
        foreach (var (hash, found) in given)
            if (found.DeviceId == deviceId)
                given.TryRemove(hash, out _);
    }

    private bool Take(string use, string? secret, Guid deviceId, string address) =>
        !string.IsNullOrEmpty(secret)
        && given.TryGetValue(Secret.Hash(secret), out var found)
        // Shown in another's place, or for another use, it stays what it is.
        && (found.Use, found.DeviceId, found.Address) == (use, deviceId, address)
        // Of two that bring it at once, one has it.
        && given.TryRemove(KeyValuePair.Create(Secret.Hash(secret), found))
        && found.Until > time.GetUtcNow();

    /// <summary>When a challenge ends; null where it is none of this device, or did.</summary>
    private DateTimeOffset? EndOf(string challenge, Guid deviceId)
    {
        var seal = challenge.LastIndexOf('.');
        if (seal < 0 || !Same(challenge[(seal + 1)..], SealOf(challenge[..seal], deviceId)))
            return null;
        var ticks = challenge[(challenge.IndexOf('.', StringComparison.Ordinal) + 1)..seal];
        var until = new DateTimeOffset(long.Parse(ticks, CultureInfo.InvariantCulture), TimeSpan.Zero);
        return until > time.GetUtcNow() ? until : null;
    }

    private static bool Same(string one, string other) =>
        CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(one), Encoding.UTF8.GetBytes(other));

    private string SealOf(string asked, Guid deviceId) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(own, Encoding.UTF8.GetBytes($"{deviceId:N}\n{asked}")));

    /// <summary>True once for a challenge that was signed: it is remembered until it ends.</summary>
    private bool IsFirst(string challenge, Guid deviceId, DateTimeOffset until)
    {
        DropOld();
        return given.Count(g => (g.Value.DeviceId, g.Value.Use) == (deviceId, Signed)) < MostSigned
            && given.TryAdd(Secret.Hash(challenge), new(Signed, deviceId, "", until));
    }

    private void DropOld()
    {
        foreach (var (hash, old) in given)
            if (old.Until <= time.GetUtcNow())
                given.TryRemove(hash, out _);
    }

    private string Give(string use, Guid deviceId, string address, TimeSpan life)
    {
        DropOld();
        var mine = given.Where(g => (g.Value.DeviceId, g.Value.Use) == (deviceId, use));
        foreach (var (hash, _) in mine.OrderByDescending(g => g.Value.Until).Skip(MostOfUse - 1))
            given.TryRemove(hash, out _);
        var secret = Secret.New();
        given[Secret.Hash(secret)] = new(use, deviceId, address, time.GetUtcNow() + life);
        return secret;
    }

    private sealed record Given(string Use, Guid DeviceId, string Address, DateTimeOffset Until);
}

/// <summary>What a device answers to a challenge.</summary>
/// <param name="Signature">Base 64.</param>
internal sealed record DeviceAnswer(string Challenge, string Signature);

/// <summary>The open half of a device's key.</summary>
internal static class DeviceKey
{
    /// <summary>More is no such key [letters].</summary>
    private const int MostLetters = 400;

    /// <summary>True when the text was signed (ECDSA, SHA-256, r and s one after the other) by the key's other half.</summary>
    /// <param name="key">SubjectPublicKeyInfo in base 64; another curve than P-256 is refused.</param>
    public static bool IsSigned(string? key, string? signature, string text)
    {
        if (key is not { Length: > 0 and <= MostLetters } || signature is not { Length: > 0 and <= MostLetters })
            return false;
        try
        {
            using var open = ECDsa.Create();
            open.ImportSubjectPublicKeyInfo(Convert.FromBase64String(key), out _);
            return open.ExportParameters(false).Curve.Oid.Value == ECCurve.NamedCurves.nistP256.Oid.Value
                && open.VerifyData(Encoding.UTF8.GetBytes(text), Convert.FromBase64String(signature), HashAlgorithmName.SHA256);
        }
        catch (Exception none) when (none is CryptographicException or FormatException)
        {
            return false;
        }
    }
}
