using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawers;

/// <summary>What is entered at the drawer, each from what was typed.</summary>
public static class DrawerEdit
{
    /// <summary>The most bins: so many are reckoned through in one question.</summary>
    public const int MostBins = 5000;

    private const int MostWords = 120;
    private const double MostPieces = 100_000;
    private const double MostDays = 3652.5;

    /// <summary>A new bin.</summary>
    /// <param name="bin">Its id, made beforehand.</param>
    public static DrawerTyped Add(Drawer drawer, Guid bin, BinTyped typed)
    {
        if (drawer.Bins.Length >= MostBins)
            return Refuse($"The drawer holds {ValueText.Plain(MostBins)} bins. Remove one that is empty.");
        var (count, wrong) = Pieces(typed.Count, "", least: 0);
        var said = Said(bin, typed);
        return said.Problem.Length > 0 ? said
            : wrong.Length > 0 ? Refuse($"How many there are: {wrong}")
            : Taken([.. said.Facts, new BinCounted(bin, count)]);
    }

    /// <summary>What is changed of a bin; what stays as it was is not said again, so that another window's change of it stays too.</summary>
    public static DrawerTyped Change(Bin bin, BinTyped typed)
    {
        if (Said(bin.Id, typed) is not { Problem: "", Facts: [BinSaid said] } read)
            return Said(bin.Id, typed);
        var changed = said with
        {
            Tag = said.Tag == bin.Tag ? null : said.Tag,
            Name = said.Name == bin.Name ? null : said.Name,
            Part = said.Part == bin.Part ? null : said.Part,
            Price = said.Price == bin.Price ? null : said.Price,
            LeadDays = said.LeadDays == bin.LeadDays ? null : said.LeadDays,
            PerYear = (said.PerYear < 0 ? null : said.PerYear) == bin.PerYear ? null : said.PerYear,
        };
        return changed == new BinSaid(bin.Id) ? new([], "") : read with { Facts = [changed] };
    }

    /// <summary>A bin as its fields hold it.</summary>
    public static BinTyped TypedOf(Bin bin) =>
        new(
            bin.Tag,
            bin.Name,
            bin.Part,
            ValueText.Plain(bin.Count),
            bin.Price.ToString("0.##", CultureInfo.InvariantCulture),
            ShopEdit.Show(bin.LeadDays),
            bin.PerYear is { } perYear ? ShopEdit.Show(perYear) : ""
        );

    /// <summary>So many lie in it.</summary>
    public static DrawerTyped Count(Bin bin, string count) =>
        Pieces(count, "", least: 0) is ({ } n, "") ? Taken([new BinCounted(bin.Id, n)]) : Refuse(Pieces(count, "", least: 0).Problem);

    /// <summary>So many went out.</summary>
    public static DrawerTyped Use(Bin bin, string count, string words)
    {
        var (n, wrong) = Pieces(count, "1");
        return wrong.Length > 0 ? Refuse(wrong)
            : n > bin.Count
                ? Refuse(
                    bin.Count == 0
                        ? "The bin is empty by the count. Count it first."
                        : $"Only {ValueText.Plain(bin.Count)} in the bin. Count it first."
                )
            : Taken([new PartsUsed(bin.Id, n, Short(words))]);
    }

    /// <summary>So many were ordered.</summary>
    public static DrawerTyped Order(Bin bin, string count, string supplier) =>
        Pieces(count, "") is ({ } n, "")
            ? Taken([new PartsOrdered(bin.Id, n, Short(supplier), bin.Price)])
            : Refuse(Pieces(count, "").Problem);

    /// <summary>A batch came in.</summary>
    /// <param name="date">As a date field has it: 2026-11-30.</param>
    public static DrawerTyped Receive(Bin bin, string count, string supplier, string lot, string date)
    {
        var (n, wrong) = Pieces(count, "");
        return wrong.Length > 0 ? Refuse(wrong)
            : !DateOnly.TryParseExact(date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
                ? Refuse("Enter the date on the parts or on the bill.")
            : Taken([new PartsReceived(bin.Id, n, Short(supplier), Short(lot), day)]);
    }

    /// <summary>A kit: counts by bin as typed, empty for none.</summary>
    public static DrawerTyped Kit(Guid kit, string name, IEnumerable<(Guid Bin, string Count)> needs, string planned)
    {
        if (name.Trim().Length == 0)
            return Refuse("Name the job: “Record cord and plug”.");
        var (jobs, wrong) = Pieces(planned, "0", least: 0);
        var (counts, problem) = Counts(needs);
        return wrong.Length > 0 ? Refuse(wrong)
            : problem.Length > 0 ? Refuse(problem)
            : counts.IsEmpty ? Refuse("Say how many of at least one part it takes.")
            : Taken([new KitSaid(kit, Short(name), counts, jobs)]);
    }

    /// <summary>A donor: what is left in it, by bin and in words.</summary>
    public static DrawerTyped Donor(Guid donor, string tag, Guid? unit, IEnumerable<(Guid Bin, string Count)> left, string words)
    {
        if (tag.Trim().Length == 0)
            return Refuse("Write the tag of the unit.");
        var (counts, problem) = Counts(left);
        return problem.Length > 0 ? Refuse(problem)
            : counts.IsEmpty && words.Trim().Length == 0 ? Refuse("Say what is left in it.")
            : Taken([new DonorSaid(donor, Short(tag), unit, counts, Short(words))]);
    }

    /// <summary>What the drawer lacks for a kit, in words; empty where all of it is there.</summary>
    public static string Lacking(Drawer drawer, DrawerKit kit)
    {
        var lacking = kit.Needs.Where(n => !drawer.Has(n)).Select(n => drawer.Find(n.Bin)?.Title ?? "a part that has no bin now");
        return Sentences.List(lacking) is { Length: > 0 } what ? $"Not enough by the count: {what}. Count again or take fewer." : "";
    }

    private static DrawerTyped Said(Guid bin, BinTyped typed)
    {
        if (typed.Name.Trim().Length == 0)
            return Refuse("Say what lies in the bin.");
        if (
            !decimal.TryParse(Or(typed.Price, "0"), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var price)
            || price > 1_000_000
        )
            return Refuse($"Price: “{Short(typed.Price)}” is not a price. Try 1.60.");
        var (days, wrong) = ShopEdit.Number(Or(typed.LeadDays, "0"), 0, MostDays);
        if (wrong.Length > 0)
            return Refuse($"Days to get more: {wrong}");
        var (perYear, wrongUse) = typed.PerYear.Trim().Length == 0 ? (-1, "") : ShopEdit.Number(typed.PerYear, 0, MostPieces);
        return wrongUse.Length > 0
            ? Refuse($"Used a year: {wrongUse}")
            : Taken([
                new BinSaid(bin)
                {
                    Tag = Short(typed.Tag),
                    Name = Short(typed.Name),
                    Part = Short(typed.Part),
                    Price = price,
                    LeadDays = days,
                    PerYear = perYear,
                },
            ]);
    }

    private static (ImmutableArray<BinCount> Counts, string Problem) Counts(IEnumerable<(Guid Bin, string Count)> typed)
    {
        var counts = ImmutableArray.CreateBuilder<BinCount>();
        foreach (var (bin, text) in typed)
        {
            var (n, wrong) = Pieces(text, "0", least: 0);
            if (wrong.Length > 0)
                return ([], wrong);
            if (n > 0)
                counts.Add(new(bin, n));
        }
        return (counts.ToImmutable(), "");
    }

    internal static (int Value, string Problem) Pieces(string text, string otherwise, double least = 1)
    {
        var (value, wrong) = ShopEdit.Number(Or(text, otherwise), least, MostPieces);
        return wrong.Length > 0 ? (0, wrong)
            : value != Math.Floor(value) ? (0, "Whole pieces only.")
            : ((int)value, "");
    }

    private static string Or(string text, string otherwise) => text.Trim().Length == 0 ? otherwise : text.Trim().Replace(',', '.');

    private static string Short(string text) => text.Trim() is { Length: > MostWords } far ? far[..MostWords] : text.Trim();

    private static DrawerTyped Taken(ImmutableArray<DrawerFact> facts) => new(facts, "");

    private static DrawerTyped Refuse(string problem) => new([], problem);
}

/// <summary>A bin as its fields hold it.</summary>
public sealed record BinTyped(string Tag, string Name, string Part, string Count, string Price, string LeadDays, string PerYear)
{
    /// <summary>Nothing typed yet.</summary>
    public static BinTyped Empty { get; } = new("", "", "", "", "", "", "");
}

/// <summary>What became of something typed: facts to enter, or what is wrong and what would be right.</summary>
public sealed record DrawerTyped(ImmutableArray<DrawerFact> Facts, string Problem);
