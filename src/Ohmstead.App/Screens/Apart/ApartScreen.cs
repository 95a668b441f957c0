using Ohmstead.App.Components;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.TakeApart;

namespace Ohmstead.App.Screens.Apart;

/// <summary>A screen of taking apart: the unit with how far it is open.</summary>
public abstract class ApartScreen : UnitScreen
{
    /// <summary>How far it is open; null while the kind is not known.</summary>
    protected ApartState? State { get; private set; }

    /// <summary>The shop.</summary>
    protected Workshop.Shops.Shop Shop { get; private set; } = Workshop.Shops.Shop.Usual;

    /// <summary>The sheet with this unit's changes; the type's where those make no circuit.</summary>
    protected TypeSheet Own { get; private set; } = null!;

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        if (Sheet is null)
            return;
        Shop = await Bench.ShopAsync();
        Own = OwnSheet.Of(Unit!, Sheet).Value ?? Sheet;
        State = ApartState.Of(Unit!, Sheet);
        StateRead();
    }

    /// <summary>Called whenever the state was read anew.</summary>
    protected virtual void StateRead() { }
}
