using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;

namespace Ohmstead.Workshop.Shops;

/// <summary>The shop: name, money, meters, loads, and the limits it works by.</summary>
/// <param name="Money">What money is called, "USD" or "€".</param>
/// <param name="RatePerHour">Bench rate [money/h].</param>
/// <param name="Paper">What papers are printed on: <see cref="Letter"/> or <see cref="A4"/>.</param>
public sealed record Shop(
    string Name,
    string Address,
    string Money,
    double RatePerHour,
    string Paper,
    ImmutableArray<ShopMeter> Meters,
    ImmutableArray<ShopLoad> Loads,
    ImmutableArray<ShopLimit> Limits,
    ImmutableArray<LookOverItem> LookOver
)
{
    /// <summary>The kind of the document it is kept as.</summary>
    public const string DocumentKind = "shop";

    /// <summary>The id of the document.</summary>
    public const string DocumentId = "shop";

    /// <summary>Letter paper, 8.5 by 11 inches.</summary>
    public const string Letter = "letter";

    /// <summary>A4 paper, 210 by 297 mm.</summary>
    public const string A4 = "a4";

    /// <summary>The second language of the owner's page, by the id of its words file; empty for none.</summary>
    public string SecondLanguage { get; init; } = "";

    /// <summary>How often a rewire goes wrong in each way.</summary>
    public RewireChances Rewire { get; init; } = RewireChances.Usual;

    /// <summary>Parts that wear, with their chance of failing later.</summary>
    public ImmutableArray<ShopPart> Parts { get; init; } = UsualShop.Parts;

    /// <summary>Limits of the tests before a unit goes back, beside those that checks and papers use.</summary>
    public ImmutableArray<ShopLimit> TestLimits { get; init; } = UsualShop.TestLimits;

    /// <summary>This shop's own chances of faults, taken by hand; none where those of the type sheets are used.</summary>
    public ImmutableArray<ShopChance> Chances { get; init; } = [];

    /// <summary>Units that they were learned from.</summary>
    public int ChancesFrom { get; init; }

    /// <summary>What a unit that comes back costs besides the work [money]. Common practice, no source.</summary>
    public double ComeBackCost { get; init; } = 20;

    /// <summary>What the owner is charged where a repair ends at a stop point [money]. Common practice, no source.</summary>
    public decimal StopFee { get; init; } = 20;

    /// <summary>How many of 100 repairs end at a stop point that they come to [%]. Common practice, no source.</summary>
    public double StopPercent { get; init; } = 4;

    /// <summary>How long an estimate holds [days].</summary>
    public int EstimateDays { get; init; } = 30;

    /// <summary>What a shop starts with. Its figures are common practice, no source.</summary>
    public static Shop Usual { get; } = UsualShop.Make();
}

/// <summary>A meter on the bench.</summary>
/// <param name="Errors">Limits of error by quantity ("ac-volts"), as in a readings file.</param>
/// <param name="IsTrueRms">False for one that responds to the average and is scaled for a sine.</param>
public sealed record ShopMeter(string Id, string Name, bool IsTrueRms, ImmutableSortedDictionary<string, ShopMeterError> Errors)
{
    /// <summary>True when what its test leads read was measured, or the question was skipped.</summary>
    public bool AreLeadsKnown { get; init; }
}

/// <summary>The limit of error of one quantity: ± (percent + floor).</summary>
/// <param name="Floor">Fixed part, in the quantity's unit.</param>
/// <param name="Shared">Share of it common to all readings [0..1].</param>
/// <param name="LeadOhms">What the probes read when joined [Ω].</param>
public sealed record ShopMeterError(double Percent, double Floor, double Shared, double LeadOhms);

/// <summary>A load or lamp on the shelf.</summary>
/// <param name="Ohms">Its resistance; of a lamp, hot [Ω].</param>
/// <param name="Volts">Rated volts of a lamp; 0 for a resistance [V].</param>
/// <param name="Amps">Rated amps of a lamp; 0 for a resistance [A].</param>
public sealed record ShopLoad(string Id, string Name, double Ohms, double Volts, double Amps);

/// <summary>A part that wears.</summary>
/// <param name="Id">As the take-apart steps of a type sheet name it: "roller".</param>
/// <param name="Price">Of a new one [money].</param>
/// <param name="FailPercent">Chance that one of unknown age fails within the time the shop answers for [%].</param>
public sealed record ShopPart(string Id, string Name, double Price, double FailPercent)
{
    /// <summary>A test that can be made before it is replaced; null for none.</summary>
    public ShopPartTest? Test { get; init; }
}

/// <summary>A test of a part that wears.</summary>
/// <param name="Minutes">It takes [min].</param>
/// <param name="DetectsPercent">Of parts that would fail, so many are found [%].</param>
/// <param name="FalsePercent">Of parts that would not fail, so many are taken for bad [%].</param>
/// <param name="NeedsPart">True where the part has to be reached for it.</param>
public sealed record ShopPartTest(double Minutes, double DetectsPercent, double FalsePercent, bool NeedsPart);

/// <summary>A limit that the shop works by, with its source.</summary>
/// <param name="Unit">"Ω", "mA".</param>
/// <param name="Source">Where it comes from, or "common practice, no source".</param>
/// <param name="Date">When it was last looked at, as written.</param>
public sealed record ShopLimit(string Id, string Title, double Value, string Unit, string Source, string Date)
{
    /// <summary>The unit it is entered in: insulation in megohms, for nobody counts the zeros of 100000000; a rise in degrees.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public string EnteredIn =>
        Unit switch
        {
            "Ω" => "MΩ",
            "K" => "°C",
            _ => Unit,
        };

    /// <summary>How many of its own units one of those is.</summary>
    [System.Text.Json.Serialization.JsonIgnore]
    public double EnteredBy => Unit == "Ω" ? 1e6 : 1;
}

/// <summary>A part without a circuit that the look-over asks for.</summary>
/// <param name="Question">Asked in plain words.</param>
/// <param name="Answers">Usual answers, best first.</param>
public sealed record LookOverItem(string Id, string Title, string Question, ImmutableArray<string> Answers)
{
    /// <summary>Answers that say something live can be touched; null where the shop never said: then what the trade says of this part.</summary>
    public ImmutableArray<string>? Endanger { get; init; }

    /// <summary>True for an answer that says something live can be touched.</summary>
    public bool Endangers(string answer) =>
        answer.Length > 0 && (Endanger ?? UsualShop.Endangering(Id)).Contains(answer, StringComparer.Ordinal);

    /// <summary>True for a part that can have something live in reach: without a look at it nothing is known of that.</summary>
    public bool CanEndanger => (Endanger ?? UsualShop.Endangering(Id)) is { IsDefaultOrEmpty: false };

    /// <summary>True for a part that lies under the cover.</summary>
    public bool IsUnderCover => Answers.Contains(UsualShop.NotOpened);

    /// <summary>Every answer by which what was noted is read, those of earlier lists too.</summary>
    public ImmutableArray<string> Known => [.. Answers, .. UsualShop.Endangering(Id).Except(Answers, StringComparer.Ordinal)];
}
