using System.Collections.Immutable;
using System.Security.Cryptography;
using Ohmstead.App.Web;

namespace Ohmstead.App.Phones;

/// <summary>
/// The codes that are shown now. One lets one device in, once. Forty bits are few enough to type and, with so few tries, too many to guess:
/// ten tries at a code hit once in a hundred thousand million.
/// </summary>
internal sealed class PairingCodes(TimeProvider time)
{
    /// <summary>How long a code is good: enough to fetch the tablet from the kitchen.</summary>
    public static readonly TimeSpan CodeLife = TimeSpan.FromMinutes(5);

    /// <summary>An address that tried so often in vain is not listened to for a while.</summary>
    public const int MostOfAddress = 5;

    /// <summary>So many tries in vain from anywhere, and every code that is shown is taken back.</summary>
    public const int MostOfCode = 10;

    /// <summary>How long an address is not listened to after its last try.</summary>
    public static readonly TimeSpan Rest = TimeSpan.FromMinutes(10);

    /// <summary>Signs that are not taken for each other; thirty-two, five bits each.</summary>
    private const string Signs = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
    private const int Letters = 8;

    /// <summary>Past so many addresses all new ones are counted as one: whoever has that many is one person.</summary>
    public const int MostAddresses = 4096;

    /// <summary>What those are counted as.</summary>
    private const string Others = "";
    private readonly Lock door = new();
    private bool hasRested;
    private ImmutableDictionary<string, (DeviceRights Rights, DateTimeOffset Until, int Wrong)> codes = ImmutableDictionary<
        string,
        (DeviceRights, DateTimeOffset, int)
    >.Empty;
    private ImmutableDictionary<string, (int Wrong, DateTimeOffset Last)> tries = ImmutableDictionary<string, (int, DateTimeOffset)>.Empty;

    /// <summary>Every code was taken back after too many tries in vain. Called from any thread.</summary>
    public event Action? Guessed;

    /// <summary>An address is not listened to from now on. Called from any thread.</summary>
    public event Action? Rested;

    /// <summary>The address that is not listened to longest, and until when; null for none. Empty where it is many.</summary>
    public (string Address, DateTimeOffset Until)? Resting
    {
        get
        {
            var all = tries.Where(t => IsResting(t.Value)).OrderByDescending(t => t.Value.Last).ToList();
            return all.Count == 0 ? null : (all[0].Key, all[0].Value.Last + Rest);
        }
    }

    /// <summary>Makes a code.</summary>
    /// <exception cref="NotAllowed">A device asks: none lets another one in.</exception>
    public PairingCode New(DeviceRights rights)
    {
        Asker.MustBeHere();
        var (text, until) = (RandomNumberGenerator.GetString(Signs, Letters), time.GetUtcNow() + CodeLife);
        lock (door)
            codes = codes
                .RemoveRange(codes.Where(c => c.Value.Until <= time.GetUtcNow()).Select(c => c.Key))
                .Add(Secret.Hash(text), (rights, until, 0));
        return new PairingCode($"{text[..(Letters / 2)]}-{text[(Letters / 2)..]}", until);
    }

    /// <summary>Takes back a code that is no longer shown.</summary>
    public void Forget(PairingCode code)
    {
        lock (door)
            codes = codes.Remove(HashOf(code.Text));
    }

    /// <summary>What a code lets in, without using it up; null where it is not good, which counts as a try.</summary>
    /// <param name="address">Where the try comes from.</param>
    public DeviceRights? Find(string code, string address) => Try(code, address, isUsed: false);

    /// <summary>The same, and the code is used up.</summary>
    public DeviceRights? Use(string code, string address) => Try(code, address, isUsed: true);

    /// <summary>A device knew the code and could not prove its key: that is a try too.</summary>
    public void Fail(string address) => Guess(() => Wrong(address));

    private DeviceRights? Try(string code, string address, bool isUsed)
    {
        DeviceRights? found = null;
        Guess(() =>
        {
            if (IsResting(address))
                return false;
            var hash = HashOf(code);
            if (!codes.TryGetValue(hash, out var meant) || meant.Until <= time.GetUtcNow())
                return Wrong(address);
            found = meant.Rights;
            if (isUsed)
                codes = codes.Remove(hash);
            return false;
        });
        return found;
    }

    private void Guess(Func<bool> guess)
    {
        bool isOver,
            isResting;
        lock (door)
        {
            isOver = guess();
            (isResting, hasRested) = (hasRested, false);
        }
        if (isOver)
            Guessed?.Invoke();
        if (isResting)
            Rested?.Invoke();
    }

    private bool IsResting(string address) => tries.TryGetValue(CountedAs(address), out var tried) && IsResting(tried);

    private bool IsResting((int Wrong, DateTimeOffset Last) tried) => tried.Wrong >= MostOfAddress && IsCounted(tried);

    private bool IsCounted((int Wrong, DateTimeOffset Last) tried) => tried.Last + Rest > time.GetUtcNow();

    private string CountedAs(string address) => tries.ContainsKey(address) || tries.Count < MostAddresses ? address : Others;

    /// <summary>Counts a try in vain.</summary>
    /// <returns>True when it was the last for the codes that are shown.</returns>
    private bool Wrong(string address)
    {
        var now = time.GetUtcNow();
        if (tries.Count >= MostAddresses)
            tries = tries.RemoveRange(tries.Where(t => !IsCounted(t.Value)).Select(t => t.Key));
        var from = CountedAs(address);
        var before = tries.TryGetValue(from, out var tried) && IsCounted(tried) ? tried.Wrong : 0;
        tries = tries.SetItem(from, (before + 1, now));
        hasRested |= before + 1 == MostOfAddress;
        var had = codes.Count;
        codes = codes.ToImmutableDictionary(c => c.Key, c => c.Value with { Wrong = c.Value.Wrong + 1 });
        codes = codes.RemoveRange(codes.Where(c => c.Value.Wrong >= MostOfCode).Select(c => c.Key));
        return codes.Count < had;
    }

    private static string HashOf(string code) => Secret.Hash(string.Concat(code.Where(char.IsAsciiLetterOrDigit)).ToUpperInvariant());
}

/// <summary>A code as the screen shows it.</summary>
/// <param name="Text">Two groups of four signs.</param>
internal sealed record PairingCode(string Text, DateTimeOffset Until);
