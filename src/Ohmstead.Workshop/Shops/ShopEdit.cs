using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Shops;

/// <summary>Changes of the shop's settings, each from what was typed.</summary>
public static class ShopEdit
{
    private const int MostWords = 400;

    /// <summary>The quantities a meter reads, with the unit of the fixed part of their error.</summary>
    public static ImmutableArray<(string Name, string Title, string Unit)> Quantities { get; } =
    [
        ("ohms", "Ohms", "Ω"),
        ("insulation-ohms", "Insulation at 500 V", "Ω"),
        ("ac-volts", "Volts AC", "V"),
        ("dc-volts", "Volts DC", "V"),
        ("ac-amps", "Amps AC", "A"),
        ("watts", "Watts", "W"),
    ];

    /// <summary>A number as typed at the bench, point or comma.</summary>
    /// <returns>The number, or what is wrong.</returns>
    public static (double Value, string Problem) Number(string text, double least, double most)
    {
        if (text.Trim().Length == 0)
            return (0, $"Enter a number, {Show(least)} to {Show(most)}.");
        var (value, problem) = NumberText.Plain(text.Trim());
        if (problem.Length > 0)
            return (0, $"{problem} Enter {Show(least)} to {Show(most)}.");
        return value < least || value > most ? (0, $"Must be {Show(least)} to {Show(most)}.") : (value, "");
    }

    /// <summary>Said of a meter that would have no error.</summary>
    public const string NoError = "Every meter has an error: percent and fixed part cannot both be 0.";

    /// <summary>A number as it stands in a field.</summary>
    public static string Show(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    /// <summary>Changes words of the shop, a meter, a load or a limit.</summary>
    /// <param name="mustBe">True when it may not be empty.</param>
    public static ShopEdited Words(string text, bool mustBe, Func<string, Shop> change)
    {
        var words = text.Trim();
        if (mustBe && words.Length == 0)
            return new(null, "It needs a name.");
        return words.Length > MostWords ? new(null, $"At most {Show(MostWords)} characters.") : new(change(words), "");
    }

    /// <summary>Changes a number.</summary>
    public static ShopEdited Figure(string text, double least, double most, Func<double, Shop> change)
    {
        var (value, problem) = Number(text, least, most);
        return problem.Length > 0 ? new(null, problem) : new(change(value), "");
    }

    /// <summary>The shop with a meter changed.</summary>
    public static Shop WithMeter(this Shop shop, int at, Func<ShopMeter, ShopMeter> change) =>
        shop with
        {
            Meters = shop.Meters.SetItem(at, change(shop.Meters[at])),
        };

    /// <summary>Changes the error of one quantity of a meter; both parts 0 is refused, for no meter is without error.</summary>
    public static ShopEdited MeterError(
        Shop shop,
        int at,
        string quantity,
        Func<ShopMeterError, double, ShopMeterError> change,
        string text,
        double least,
        double most
    )
    {
        var (value, problem) = Number(text, least, most);
        if (problem.Length > 0)
            return new(null, problem);
        var error = change(shop.Meters[at].Errors[quantity], value);
        return error is { Percent: 0, Floor: 0 }
            ? new(null, NoError)
            : new(shop.WithMeter(at, m => m with { Errors = m.Errors.SetItem(quantity, error) }), "");
    }

    /// <summary>Makes a meter read a quantity, or not.</summary>
    public static Shop Reads(this Shop shop, int at, string quantity, bool reads) =>
        shop.WithMeter(
            at,
            m => m with { Errors = reads ? m.Errors.SetItem(quantity, Shop.Usual.Meters[0].Errors[quantity]) : m.Errors.Remove(quantity) }
        );

    /// <summary>One more meter, with the errors of a usual one.</summary>
    public static Shop AddMeter(this Shop shop) =>
        shop with
        {
            Meters = shop.Meters.Add(Shop.Usual.Meters[0] with { Id = FreeId("meter", shop.Meters.Select(m => m.Id)), Name = "New meter" }),
        };

    /// <summary>The shop with a load changed; of a lamp the hot resistance follows from volts and amps.</summary>
    public static Shop WithLoad(this Shop shop, int at, Func<ShopLoad, ShopLoad> change)
    {
        var load = change(shop.Loads[at]);
        if (load is { Volts: > 0, Amps: > 0 })
            load = load with { Ohms = load.Volts / load.Amps };
        return shop with { Loads = shop.Loads.SetItem(at, load) };
    }

    /// <summary>One more resistance, or one more lamp.</summary>
    public static Shop AddLoad(this Shop shop, bool isLamp)
    {
        var id = FreeId(isLamp ? "lamp" : "load", shop.Loads.Select(l => l.Id));
        return shop with
        {
            Loads = shop.Loads.Add(isLamp ? new ShopLoad(id, "New lamp", 24, 12, 0.5) : new ShopLoad(id, "New load", 4, 0, 0)),
        };
    }

    /// <summary>The shop with this load or lamp, or without it.</summary>
    public static Shop Has(this Shop shop, ShopLoad load, bool has) =>
        shop with
        {
            Loads = [.. shop.Loads.Where(l => l.Id != load.Id), .. has ? [load] : ImmutableArray<ShopLoad>.Empty],
        };

    /// <summary>The shop with a limit changed.</summary>
    public static Shop WithLimit(this Shop shop, int at, Func<ShopLimit, ShopLimit> change) =>
        shop with
        {
            Limits = shop.Limits.SetItem(at, change(shop.Limits[at])),
        };

    /// <summary>The shop with the limit of a test changed, in whichever list it stands.</summary>
    public static Shop WithTestLimit(this Shop shop, string id, Func<ShopLimit, ShopLimit> change) =>
        shop with
        {
            Limits = [.. shop.Limits.Select(l => l.Id == id ? change(l) : l)],
            TestLimits = [.. shop.TestLimits.Select(l => l.Id == id ? change(l) : l)],
        };

    /// <summary>Changes value and source of the limit of a test, both at once: a number nobody can trace is none.</summary>
    public static ShopEdited TestLimit(Shop shop, ShopLimit limit, string value, string source, string date)
    {
        var (number, problem) = Number(value, 0, 1e12 / limit.EnteredBy);
        if (problem.Length > 0)
            return new(null, problem);
        if (source.Trim().Length == 0)
            return new(null, "Say where this limit comes from.");
        return source.Length + date.Length > MostWords
            ? new(null, $"At most {Show(MostWords)} characters.")
            : new(
                shop.WithTestLimit(limit.Id, l => l with { Value = number * limit.EnteredBy, Source = source.Trim(), Date = date.Trim() }),
                ""
            );
    }

    /// <summary>A limit as it stands in its field.</summary>
    public static string Show(ShopLimit limit) => Show(limit.Value / limit.EnteredBy);

    /// <summary>Changes the value of a limit, as it is entered in its field.</summary>
    public static ShopEdited LimitValue(Shop shop, int at, string text)
    {
        var by = shop.Limits[at].EnteredBy;
        return Figure(text, 0, 1e12 / by, v => shop.WithLimit(at, x => x with { Value = v * by }));
    }

    /// <summary>The shop with a wearing part changed.</summary>
    public static Shop WithPart(this Shop shop, int at, Func<ShopPart, ShopPart> change) =>
        shop with
        {
            Parts = shop.Parts.SetItem(at, change(shop.Parts[at])),
        };

    /// <summary>One more wearing part, named as take-apart steps name it; a name that is there already is refused.</summary>
    public static ShopEdited AddPart(this Shop shop, string id) =>
        id.Trim().Length is 0 or > 60 ? new(null, "Write the part as the type sheet names it in \"part\".")
        : shop.Parts.Any(p => p.Id == id.Trim()) ? new(null, $"“{id.Trim()}” is there already.")
        : new(shop with { Parts = shop.Parts.Add(new ShopPart(id.Trim(), id.Trim(), 0, 0)) }, "");

    /// <summary>The shop with a part of the look-over changed.</summary>
    public static Shop WithItem(this Shop shop, int at, Func<LookOverItem, LookOverItem> change) =>
        shop with
        {
            LookOver = shop.LookOver.SetItem(at, change(shop.LookOver[at])),
        };

    /// <summary>Says which answers of a part endanger, one a line; one that is no answer of the part is refused.</summary>
    public static ShopEdited Endangering(Shop shop, int at, string text)
    {
        string[] lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        return Array.Find(lines, l => !shop.LookOver[at].Answers.Contains(l)) is { } unknown
            ? new(null, $"“{unknown}” is not one of the usual answers above.")
            : new(shop.WithItem(at, i => i with { Endanger = [.. lines] }), "");
    }

    /// <summary>One more part of the look-over.</summary>
    public static Shop AddItem(this Shop shop) =>
        shop with
        {
            LookOver = shop.LookOver.Add(
                new LookOverItem(FreeId("part", shop.LookOver.Select(i => i.Id)), "New part", "How does it look?", ["as it should be"])
            ),
        };

    private static string FreeId(string word, IEnumerable<string> taken)
    {
        var ids = taken.ToHashSet(StringComparer.Ordinal);
        for (var n = 1; ; n++)
            if (!ids.Contains($"{word}-{Show(n)}"))
                return $"{word}-{Show(n)}";
    }
}

/// <summary>What became of a changed field: the shop with it, or what is wrong and what would be right.</summary>
public sealed record ShopEdited(Shop? Shop, string Problem);
