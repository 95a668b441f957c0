using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;

namespace Ohmstead.Workshop.Dating;

/// <summary>
/// What several benches say of one thing: what was said instead of something else has taken its place at every bench, what was said
/// apart lies side by side until a person answers.
/// </summary>
/// <param name="Over">Ids of claims in whose place others were said.</param>
/// <param name="Live">Those in whose place nothing was said, by id.</param>
internal sealed record Claims(ImmutableSortedSet<string> Over, ImmutableSortedDictionary<string, Claim> Live)
{
    /// <summary>Said for the first time.</summary>
    public static Claims First(string key, string value) => new Claims(None, NoClaim).Say(key, value, isGone: false);

    /// <summary>Nothing said.</summary>
    public static ImmutableSortedSet<string> None { get; } = ImmutableSortedSet.Create<string>(StringComparer.Ordinal);

    /// <inheritdoc cref="None"/>
    public static ImmutableSortedDictionary<string, Claim> NoClaim { get; } =
        ImmutableSortedDictionary.Create<string, Claim>(StringComparer.Ordinal);

    /// <summary>What is shown: what is there before what was taken away, then by its text, at every bench the same.</summary>
    public Claim? Shown => Live.Values.OrderBy(c => c.IsGone).ThenByDescending(c => c.Value, StringComparer.Ordinal).FirstOrDefault();

    /// <summary>The different things that are said, the shown one first; one where nothing contradicts.</summary>
    public ImmutableArray<Claim> Different =>
        [
            .. Live
                .Values.OrderBy(c => c.IsGone)
                .ThenByDescending(c => c.Value, StringComparer.Ordinal)
                .DistinctBy(c => (c.IsGone, c.IsGone ? "" : c.Value)),
        ];

    /// <summary>Says something instead of all that is said here.</summary>
    public Claims Say(string key, string value, bool isGone)
    {
        var over = Over.Union(Live.Keys);
        var claim = Claim.Of(key, value, isGone, over);
        return new(over, NoClaim.Add(claim.Id, claim));
    }

    /// <summary>Both: commutative, associative, idempotent, for both are unions and what was replaced at one is replaced.</summary>
    public Claims Join(Claims other)
    {
        var over = Over.Union(other.Over);
        return new(over, Live.SetItems(other.Live).RemoveRange(over));
    }
}

/// <summary>What one bench says of one thing that dates a type.</summary>
/// <param name="Id">Twelve hexadecimal digits of what is said and of what it was said instead of.</param>
/// <param name="Value">What, as one line of JSON.</param>
/// <param name="IsGone">True where it was taken away; the value is what it was.</param>
internal sealed record Claim(string Id, string Value, bool IsGone)
{
    private const int Digits = 12;

    /// <summary>Said instead of others: the same words said again after them are not the first ones.</summary>
    public static Claim Of(string key, string value, bool isGone, IEnumerable<string> over)
    {
        var said = string.Join('\n', over.Prepend(isGone ? "gone" : "").Prepend(value).Prepend(key));
        return new(Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(said)))[..Digits], value, isGone);
    }
}
