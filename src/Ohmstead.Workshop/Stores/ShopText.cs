using System.Text.Json;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Stores;

/// <summary>The shop's settings as the text of their document.</summary>
public static class ShopText
{
    /// <summary>The settings; the usual ones where none are kept yet.</summary>
    public static Shop Read(string? text) => text is null ? UsualShop.Make() : JsonSerializer.Deserialize<Shop>(text, FactText.Options)!;

    /// <summary>Their text.</summary>
    public static string Write(Shop shop) => JsonSerializer.Serialize(shop, FactText.Options);
}
