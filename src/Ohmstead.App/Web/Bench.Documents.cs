using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Web;

/// <content>Type sheets, the shop's settings, and other documents.</content>
public sealed partial class Bench
{
    /// <summary>A sound type sheet, or null when there is none with this id or it has problems.</summary>
    public Task<TypeSheet?> SheetAsync(string id) => Store.SheetAsync(id, CancellationToken.None);

    /// <summary>Saves a new version of a document; it is on the disk when this returns.</summary>
    /// <param name="seenVersion">The version that was edited; 0 for a new one. When another stands there, nothing is written.</param>
    public async Task<DocumentSaved> SaveDocumentAsync(string kind, string id, int seenVersion, string text)
    {
        var saved = await Store.SaveDocumentAsync(kind, id, seenVersion, text, Time.GetUtcNow(), CancellationToken.None);
        if (saved.IsSaved)
        {
            Press.Kept();
            if (kind == Shop.DocumentKind)
                ShopChanged?.Invoke();
        }
        return saved;
    }

    /// <summary>The shop's settings.</summary>
    public async Task<Shop> ShopAsync() =>
        ShopText.Read((await Store.ReadDocumentAsync(Shop.DocumentKind, Shop.DocumentId, CancellationToken.None))?.Text);

    /// <summary>Changes the shop's settings as they are now, whoever wrote them last.</summary>
    public async Task EditShopAsync(Func<Shop, Shop> change)
    {
        while (true)
        {
            var kept = await Store.ReadDocumentAsync(Shop.DocumentKind, Shop.DocumentId, CancellationToken.None);
            var text = ShopText.Write(change(await ShopAsync()));
            if ((await SaveDocumentAsync(Shop.DocumentKind, Shop.DocumentId, kept?.Version ?? 0, text)).IsSaved)
                return;
        }
    }
}
