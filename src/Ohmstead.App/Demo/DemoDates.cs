using System.Collections.Immutable;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.App.Demo;

/// <summary>Invented years of the invented types: no real unit can be dated by them.</summary>
internal static class DemoDates
{
    /// <summary>By the id of the type.</summary>
    public static IEnumerable<(string Id, KindDates Dates)> All() =>
        [
            ("solo-110", new(1948, 1957, [Cord(1951), Plug(1952), Vents(1951), PostNuts(1953), WireCover(1950, 1954), Plate(1952)])),
            ("twin-175", new(1946, 1956, [Cord(1950), Plug(1951), Vents(1949), PostNuts(1952), WireCover(1948, 1953), Disc(1951)])),
            ("step-230", new(1950, 1961, [Cord(1953), Plug(1954), Screws(1955), WireCover(1952, 1957), Plate(1956)])),
        ];

    private static DateDetail Cord(int cloth) =>
        Of(
            "cord",
            Until("cloth", "cloth over rubber", cloth),
            new("rubber", "brown rubber", cloth, 1962, 1),
            From("plastic", "gray plastic", 1961)
        );

    private static DateDetail Plug(int open) => Of("plug", Until("open", "two screws, opens", open), From("molded", "molded on", open + 1));

    private static DateDetail Vents(int slots) => Of("vents", Until("slots", "slots", slots), From("round", "round holes", slots + 1));

    private static DateDetail Screws(int slotted) =>
        Of("screws", Until("slotted", "slotted", slotted), From("cross", "cross-head", slotted + 1));

    private static DateDetail PostNuts(int brass) =>
        Of("post-nuts", Until("brass", "brass, knurled", brass), From("cap", "plastic cap", brass + 1));

    private static DateDetail WireCover(int cotton, int rubber) =>
        Of(
            "wire-cover",
            Until("cotton", "cotton", cotton),
            new("rubber", "rubber", cotton, rubber, 1),
            From("plastic", "plastic", rubber + 1)
        );

    private static DateDetail Disc(int copper) =>
        Of("disc", Until("copper", "copper, one plate", copper), From("stack", "stack of small plates", copper + 1));

    private static DateDetail Plate(int two) =>
        Of("plate", Until("two-lines", "two patent lines", two), From("one-line", "one patent line", two + 1));

    private static DateDetail Of(string usual, params ImmutableArray<DateVariant> variants) =>
        DatesEdit.Usual.First(d => d.Id == usual) with
        {
            Variants = variants,
        };

    private static DateVariant Until(string id, string title, int last) => new(id, title, null, last, DateVariant.UsualSoftYears);

    private static DateVariant From(string id, string title, int first) => new(id, title, first, null, DateVariant.UsualSoftYears);
}
