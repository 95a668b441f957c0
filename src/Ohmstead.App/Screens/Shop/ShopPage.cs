using Microsoft.AspNetCore.Components;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Screens.Shop;

/// <summary>One subject of the shop's settings, a page of its own.</summary>
public abstract class ShopPage : ComponentBase
{
    /// <summary>The settings as they stand.</summary>
    [Parameter, EditorRequired]
    public Workshop.Shops.Shop Shop { get; set; } = null!;

    /// <summary>Keeps a change; answers what is wrong with it, or nothing.</summary>
    [Parameter, EditorRequired]
    public Func<ShopEdited, Task<string>> Save { get; set; } = null!;
}
