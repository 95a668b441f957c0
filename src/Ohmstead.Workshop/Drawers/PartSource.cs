using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>Where a new part can come from: a bin, and the batch in it.</summary>
/// <param name="From">What a repair says then.</param>
/// <param name="Words">"C1 Roller, carbon, Acme, lot 41: 6 left".</param>
/// <param name="IsAside">True where it lies beside this unit already.</param>
/// <param name="Suits">True where it is such a part, by its id or its name.</param>
public sealed record PartSource(FromDrawer From, string Words, bool IsAside, bool Suits)
{
    /// <summary>How many can be taken.</summary>
    public int Left { get; private init; }

    /// <summary>What lies beside the unit first, then what suits the element, then all else that is there.</summary>
    public static ImmutableArray<PartSource> For(Drawer drawer, Guid unit, string element, TypeSheet sheet)
    {
        var part =
            sheet.TakeApart.FirstOrDefault(s => s.Lifts.Contains(element) || s.Id == element || s.Id == $"{element}-out")?.Part ?? "";
        var name = PartNames.Of(sheet, element);
        var beside = drawer.Aside.Where(a => a.Unit == unit).SelectMany(a => a.Parts).ToDictionary(p => p.Bin, p => p.Count);
        return
        [
            .. drawer
                .Bins.Where(b => b.Count + beside.GetValueOrDefault(b.Id) > 0)
                .SelectMany(b => Of(b, beside.GetValueOrDefault(b.Id), b.Holds(part) || IsNamedSo(b, name)))
                .OrderByDescending(s => s.IsAside)
                .ThenByDescending(s => s.Suits),
        ];
    }

    private static IEnumerable<PartSource> Of(Bin bin, int beside, bool suits)
    {
        var batches = bin.Batches.Where(b => b.Left > 0).ToList();
        var unknown = bin.Count + bin.SetAside - batches.Sum(b => b.Left);
        string Words(string lot, int left) =>
            $"{bin.Title}{(lot.Length > 0 ? $", {lot}" : "")}: {(beside > 0 ? $"{ValueText.Plain(beside)} beside this unit" : $"{ValueText.Plain(left)} left")}";
        foreach (var batch in batches)
            yield return new(new(bin.Id, batch.Id, 1, bin.Name, batch.Name), Words(batch.Name, batch.Left), beside > 0, suits)
            {
                Left = Math.Min(batch.Left, bin.Count + beside),
            };
        if (unknown > 0)
            yield return new(
                new(bin.Id, null, 1, bin.Name, ""),
                Words(batches.Count > 0 ? "batch not known" : "", unknown),
                beside > 0,
                suits
            )
            {
                Left = Math.Min(unknown, bin.Count + beside),
            };
    }

    /// <summary>By the first word of what lies in the bin: "Cord, 18 AWG" suits the black wire of the cord.</summary>
    private static bool IsNamedSo(Bin bin, string element)
    {
        const int shortest = 4;
        var first = bin.Name.Split(' ', ',')[0];
        return first.Length >= shortest && element.Contains(first, StringComparison.OrdinalIgnoreCase);
    }
}
