using System.Globalization;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>The figures of one type, or of all.</summary>
internal sealed class DraftedFigures(string name)
{
    /// <summary>The table's heading.</summary>
    public const string Heading =
        "| type | units | inside | width | drafted | with three sound units more | the outline | true sheet | named first |\n|---|---|---|---|---|---|---|---|---|";

    private readonly List<DraftedTrial.BandKept> bands = [];
    private readonly List<DraftedTrial.UnitKept> units = [];
    private readonly List<DraftedTrial.NamedKept> named = [];

    /// <summary>Takes in a drafted sheet's bands.</summary>
    public void Add(DraftedTrial.BandKept band) => bands.Add(band);

    /// <summary>Takes in a unit's scores.</summary>
    public void Add(DraftedTrial.UnitKept unit) => units.Add(unit);

    /// <summary>Takes in what was said of a unit's type.</summary>
    public void Add(DraftedTrial.NamedKept one) => named.Add(one);

    /// <summary>Share of the readings of sound units inside the band.</summary>
    public double Inside => bands.Sum(b => b.Inside) / (double)bands.Sum(b => b.Count);

    /// <summary>Width of the band over that of the true sheet, in the middle.</summary>
    public double Width => Median([.. bands.SelectMany(b => b.Widths)]);

    private double Mean(Func<DraftedTrial.UnitKept, double?> of) => units.Select(of).OfType<double>().DefaultIfEmpty(double.NaN).Average();

    /// <summary>Mean average precision over that with the true sheet.</summary>
    public double Drafted => Mean(u => u.Drafted) / Mean(u => u.True);

    /// <summary>The same, with three sound units more.</summary>
    public double More => Mean(u => u.More) / Mean(u => u.True);

    /// <summary>The same, by the outline alone.</summary>
    public double Outline => Mean(u => u.Outline) / Mean(u => u.True);

    /// <summary>Share of the units whose type was named first, none of these included.</summary>
    public double Right => named.Count(n => n.IsRight) / (double)named.Count;

    /// <summary>By thirds of how sure it is: mean probability less share right, the largest of them.</summary>
    public double Calibration =>
        named
            .OrderBy(n => n.Probability)
            .Select((n, at) => (One: n, Third: 3 * at / named.Count))
            .GroupBy(n => n.Third, n => n.One)
            .Max(g => Math.Abs(g.Average(n => n.Probability) - (g.Count(n => n.IsRight) / (double)g.Count())));

    /// <summary>The table's row.</summary>
    public string Row() =>
        string.Create(
            CultureInfo.InvariantCulture,
            $"| {name} | {units.Count} | {Inside:F3} | {Width:F2} | {Drafted:F2} | {More:F2} | {Outline:F2} | {Mean(u => u.True):F2} | {named.Count(n => n.IsRight)}/{named.Count} |"
        );

    /// <summary>What is asked of all types together, and of the worst.</summary>
    public static IEnumerable<Asked> AskedOf(DraftedFigures all, IReadOnlyCollection<DraftedFigures> types) =>
        [
            Asked.AtLeast("readings of sound units inside the drafted band, mean over the types", types.Average(t => t.Inside), 0.90),
            Asked.AtLeast("the same, worst type", types.Min(t => t.Inside), 0.84),
            Asked.AtMost("width of that band over the true sheet's, median", all.Width, 2.0),
            Asked.AtLeast("average precision over that with the true sheet: drafted from one faulty unit", all.Drafted, 0.85),
            Asked.AtLeast("the same, with three sound units more", all.More, 0.95),
            Asked.AtLeast("the same, by the outline, the unit at hand", all.Outline, 0.85),
            Asked.AtLeast("the right type named first", all.Right, 0.90),
            Asked.AtMost("mean probability less share right, the worst third", all.Calibration, 0.10),
        ];

    private static double Median(double[] all)
    {
        if (all.Length == 0)
            return double.NaN;
        Array.Sort(all);
        return (all[(all.Length - 1) / 2] + all[all.Length / 2]) / 2;
    }
}
