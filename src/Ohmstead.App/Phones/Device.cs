using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.App.Phones;

/// <summary>A device that was paired. Of its secrets only what proves nothing by itself is kept: a hash and the open half of its key.</summary>
/// <param name="Name">As its person called it.</param>
/// <param name="UnitId">The one unit that a phone sees; null for the whole bench.</param>
/// <param name="Key">The open half of its key: ECDSA, P-256, as SubjectPublicKeyInfo in base 64.</param>
/// <param name="CookieHash">SHA-256 of its cookie, hexadecimal.</param>
internal sealed record Device(Guid Id, string Name, Guid? UnitId, bool MayWork, string Key, string CookieHash)
{
    /// <summary>When it was paired.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>It is let in before this.</summary>
    public DateTimeOffset Until { get; init; }

    /// <summary>When it last proved that it is the one.</summary>
    public DateTimeOffset Seen { get; init; }

    /// <summary>True for a device with the whole bench.</summary>
    public bool IsBench => UnitId is null;

    /// <summary>The mark that its entries carry.</summary>
    public string Mark => Secret.Hash(Id.ToString("N"))[..8];
}

/// <summary>Secrets that nobody can guess, and the hashes by which they are looked up: how long the search takes tells nothing.</summary>
internal static class Secret
{
    private const int Bytes = 16;

    public static string New() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(Bytes));

    public static string Hash(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
