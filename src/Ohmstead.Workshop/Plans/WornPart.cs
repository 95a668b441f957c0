using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.TakeApart;

namespace Ohmstead.Workshop.Plans;

/// <summary>The part of the shop's price list that an element is renewed with.</summary>
internal static class WornPart
{
    /// <summary>By the step of taking apart at which the element can be worked on; null where that names no part the shop knows.</summary>
    public static ShopPart? Of(TypeSheet own, Shop shop, string about) =>
        own.TakeApart.FirstOrDefault(s => s.Part.Length > 0 && ReachFor.PartsOf(s.Id, own).Contains(about)) is { } step
            ? shop.Parts.FirstOrDefault(p => p.Id == step.Part)
            : null;
}
