using System.Collections.Immutable;
using System.Text.Json;

namespace Ohmstead.Workshop.Dating;

/// <summary>What was said of one thing that dates a type, kept beside it once it was changed: so a merge knows what took the place of what.</summary>
/// <param name="Key">The thing.</param>
/// <param name="Over">Ids of what was said before.</param>
/// <param name="Now">What counts; more than one where two benches changed it apart.</param>
public sealed record SaidOf(string Key, ImmutableArray<string> Over, ImmutableArray<SaidValue> Now)
{
    internal Claims Claims =>
        new(
            Claims.None.Union(Over),
            Claims.NoClaim.SetItems(Now.Select(n => KeyValuePair.Create(n.Id, new Claim(n.Id, DatesClaims.Write(n.Value), n.IsGone))))
        );

    internal static SaidOf Of(string key, Claims claims) =>
        new(
            key,
            [.. claims.Over],
            [.. claims.Live.Values.Select(c => new SaidValue(c.Id, DatesClaims.Read<JsonElement>(c.Value), c.IsGone))]
        );

    /// <summary>True where it can be used.</summary>
    internal bool IsSound =>
        Key is { Length: > 0 }
        && !Over.IsDefault
        && !Now.IsDefaultOrEmpty
        && Over.All(o => o is not null)
        && Now.All(n => n is { Id.Length: > 0 } && n.Value.ValueKind != JsonValueKind.Undefined && IsOfItsKey(n.Value));

    private bool IsOfItsKey(JsonElement value)
    {
        try
        {
            return Key.Split(':') switch
            {
                [DatesClaims.Made] => DatesClaims.Read<MadeSaid>(value.GetRawText()) is not null,
                [DatesClaims.Donors] => value.ValueKind == JsonValueKind.Number,
                ["detail", var id] => DatesClaims.Read<DateDetail>(value.GetRawText()) is { Id: { } own, Title: not null }
                    && DatesClaims.Detail(own) == $"detail:{id}",
                ["look", _, var id] => DatesClaims.Read<DateVariant>(value.GetRawText()) is { Id: { } own, Title: not null }
                    && Uri.EscapeDataString(own) == id,
                ["more", _] => true,
                _ => false,
            };
        }
        catch (JsonException)
        {
            return false;
        }
    }
}

/// <summary>One thing that is said.</summary>
/// <param name="Id">Its mark.</param>
/// <param name="IsGone">True where it was taken away.</param>
public sealed record SaidValue(string Id, JsonElement Value, bool IsGone = false);
