using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Findings;

/// <summary>What is probably wrong, said to a person.</summary>
/// <param name="Findings">Faults that are at least unlikely, or that were judged, most probable first; equal ones are one.</param>
/// <param name="Alike">Those that nothing taken tells apart, in groups of two or more.</param>
/// <param name="SoundProbability">Chance that none of the listed faults is there.</param>
/// <param name="IsExplained">False when nothing in the list explains the readings.</param>
/// <param name="Unexplained">The readings that disagree with the best that was found, but for the slips.</param>
public sealed record FindingsView(
    ImmutableArray<Finding> Findings,
    ImmutableArray<AlikeFindings> Alike,
    ImmutableArray<ReadingPoint> Readings,
    double SoundProbability,
    bool IsExplained,
    ImmutableArray<ReadingSpec> Unexplained
)
{
    /// <summary>Below this a fault is not named [probability].</summary>
    public const double WorthNaming = 0.05;

    /// <summary>In a group of faults alike a lesser one is named too.</summary>
    private const double WorthNamingAlike = 0.02;

    /// <summary>Below this a fault is not even folded away.</summary>
    private const double WorthFolding = 0.005;

    private const int MostFindings = 12;

    /// <summary>Letters there are.</summary>
    private const int MostLetters = 26;

    /// <summary>What is off on the bench or in the type sheet, and what no listed fault explains: to be settled before any finding.</summary>
    public ImmutableArray<BenchDoubt> Doubts { get; init; } = [];

    /// <summary>Readings that are probably slips, most probable first.</summary>
    public ImmutableArray<SlipWords> Slips { get; init; } = [];

    /// <summary>Faults below <see cref="WorthNaming"/>, most probable first.</summary>
    public ImmutableArray<Finding> Unlikely { get; init; } = [];

    /// <summary>
    /// What is shown one after another: a fault by itself, or several that could each be it around the reading that settles it.
    /// What was found by hand comes first, then the most probable; what was ruled out by hand is not among them, nor what nothing
    /// taken speaks of.
    /// </summary>
    public ImmutableArray<AlikeFindings> Cards
    {
        get
        {
            var open = Findings.Where(f => f.Judgement != Journal.Judgement.Dismissed && !f.IsUntested).ToList();
            var pairs = Alike.Where(a => a.Findings.Any(f => f.Probability >= WorthNaming && !f.IsUntested)).ToList();
            var paired = pairs.SelectMany(a => a.Findings).Select(f => f.Mode.Name).ToHashSet(StringComparer.Ordinal);
            var singles = open.Where(f => !paired.Contains(f.Mode.Name)).Select(f => new AlikeFindings([f], []));
            return
            [
                .. pairs
                    .Concat(singles)
                    .OrderByDescending(c => c.Findings.Any(f => f.Judgement == Journal.Judgement.Confirmed))
                    .ThenByDescending(c => c.Findings.Max(f => f.Probability)),
            ];
        }
    }

    /// <summary>The cards of a unit: before any reading counts, only what was found by hand is a finding.</summary>
    public ImmutableArray<AlikeFindings> CardsNow =>
        Readings.Length > 0 ? Cards : [.. Cards.Where(c => c.Findings.Any(f => f.Judgement == Journal.Judgement.Confirmed))];

    /// <summary>
    /// The letter of each finding that is shown, by the name of its fault: one name for it on its card, on the drawing and after a
    /// reading. A card by itself is A; the faults of one that could be either are B1 and B2.
    /// </summary>
    public ImmutableDictionary<string, string> Tags =>
        Cards
            .Take(MostLetters)
            .SelectMany(
                (card, c) => card.Findings.Select((f, n) => (f, Tag: Letter(c) + (card.Findings.Length > 1 ? ValueText.Plain(n + 1) : "")))
            )
            .DistinctBy(t => t.f.Mode.Name, StringComparer.Ordinal)
            .ToImmutableDictionary(t => t.f.Mode.Name, t => t.Tag, StringComparer.Ordinal);

    /// <summary>The letter of the most probable finding of each part, by the part's id.</summary>
    public ImmutableDictionary<string, string> PartTags
    {
        get
        {
            var tags = Tags;
            return Cards
                .SelectMany(c => c.Findings)
                .OrderByDescending(f => f.Probability)
                .SelectMany(f =>
                    f.Members.SelectMany(m => m.Parts, (_, part) => (Element: part, Tag: tags.GetValueOrDefault(f.Mode.Name, "")))
                )
                .Where(t => t.Tag.Length > 0)
                .DistinctBy(t => t.Element, StringComparer.Ordinal)
                .ToImmutableDictionary(t => t.Element, t => t.Tag, StringComparer.Ordinal);
        }
    }

    /// <summary>What nothing taken speaks of: it has the chance that any unserviced unit has.</summary>
    public IEnumerable<Finding> Untested
    {
        get
        {
            var shown = Cards.SelectMany(c => c.Findings).Select(f => f.Mode.Name).ToHashSet(StringComparer.Ordinal);
            return Findings.Where(f => f.IsUntested && !shown.Contains(f.Mode.Name));
        }
    }

    /// <summary>What was ruled out by hand.</summary>
    public IEnumerable<Finding> RuledOut => Findings.Where(f => f.Judgement == Journal.Judgement.Dismissed);

    /// <summary>Puts a diagnosis into words.</summary>
    /// <param name="model">The unit's own sheet.</param>
    public static FindingsView Of(BenchUnit unit, UnitModel model, UnitReadings readings, DiagnosisResult result)
    {
        var judged = JudgedSheet.Judgements(unit);
        var taken = readings.Readings.Where(r => r.IsTaken).ToList();
        var teller = new FindingWording(model, taken, result, judged);
        var worth = teller
            .Faults.Where(f => f.Members.Any(m => judged.ContainsKey((m.Element, m.Mode))))
            .Concat(teller.Faults.Where(f => f.Probability >= WorthNaming).Take(MostFindings))
            .Distinct()
            .OrderByDescending(f => f.Probability)
            .ThenBy(f => f.Mode.Number)
            .ToImmutableArray();
        var points =
            from pair in result.Readings.Zip(taken)
            let r = pair.First
            let deviation = r.Deviation
            where deviation.HasValue
            select new ReadingPoint(
                r.Spec,
                ReadingWords.Measured(pair.Second),
                deviation.GetValueOrDefault(),
                r.Expected is { } expected ? ValueText.Of(expected, r.Spec.Quantity) : "",
                result.Unexplained.Contains(r.Spec.Id),
                pair.Second.Outcome == Outcome.Jumps
            );
        var doubts = UnitDoubts.Of(readings, result);
        ImmutableArray<AlikeFindings> alike = [.. AlikeOf(model, readings, result, teller)];
        var shown = worth.Concat(alike.SelectMany(a => a.Findings)).Select(f => f.Mode.Name).ToHashSet(StringComparer.Ordinal);
        return new(
            worth,
            alike,
            [.. points],
            result.SoundProbability,
            result.IsExplained,
            [.. result.Unexplained.Where(id => !doubts.Slips.Any(s => s.Id == id)).Select(id => model.Sheet.FindReading(id)!)]
        )
        {
            Doubts = BenchDoubt.Of(model.Sheet, readings, doubts.Bench),
            Slips = [.. doubts.Slips.Select(s => SlipWords.Of(model.Sheet, readings, s)).OfType<SlipWords>()],
            Unlikely =
            [
                .. teller
                    .Faults.Where(f => f.Probability is >= WorthFolding and < WorthNaming && !shown.Contains(f.Mode.Name))
                    .Take(MostFindings),
            ],
        };
    }

    private static IEnumerable<AlikeFindings> AlikeOf(UnitModel model, UnitReadings readings, DiagnosisResult result, FindingWording teller)
    {
        var byName = result.Faults.ToDictionary(f => f.Mode.Name, StringComparer.Ordinal);
        foreach (var group in result.Alike)
        {
            var findings = group
                .Select(teller.Holding)
                .Where(f => f.Probability >= WorthNamingAlike && f.Judgement == Journal.Judgement.Open)
                .Distinct()
                .OrderByDescending(f => f.Probability)
                .ToImmutableArray();
            if (findings.Length > 1)
                yield return new(findings, SettlingReading.For(model, readings, result, [.. findings.Select(f => byName[f.Mode.Name])]));
        }
    }

    /// <summary>The findings whose letters are on a drawing, in the order of the letters.</summary>
    public IEnumerable<(string Letter, Finding Finding)> Lettered
    {
        get
        {
            var (tags, shown) = (Tags, PartTags.Values.ToHashSet(StringComparer.Ordinal));
            return Cards
                .SelectMany(c => c.Findings)
                .Where(f => tags.TryGetValue(f.Mode.Name, out var tag) && shown.Contains(tag))
                .Select(f => (tags[f.Mode.Name], f));
        }
    }

    private static string Letter(int card) => ((char)('A' + card)).ToString();
}

/// <summary>Faults that nothing taken tells apart, and the readings that would; or one fault by itself.</summary>
public sealed record AlikeFindings(ImmutableArray<Finding> Findings, ImmutableArray<SettlingReading> SettlingReadings)
{
    /// <summary>True when a reading that would tell them apart can be taken now.</summary>
    public bool CanBeSettled => SettlingReadings.Any(r => r.IsOpen);

    /// <summary>Where all of them are, as their names say after the comma: "track 2"; empty when they are not in one place.</summary>
    public string Place
    {
        get
        {
            var places = Findings.Select(f =>
                f.Name.LastIndexOf(", ", StringComparison.Ordinal) is > 0 and var at ? f.Name[(at + 2)..] : ""
            );
            return places.Distinct(StringComparer.Ordinal).ToList() is [var one] ? one : "";
        }
    }
}

/// <summary>A reading taken, as it lies beside what sound units show.</summary>
/// <param name="Measured">What was read, with its unit.</param>
/// <param name="Deviations">From the sound unit, in standard deviations; 0 for a reading that jumped.</param>
/// <param name="WithFaults">What the best set of faults gives, with its unit.</param>
/// <param name="IsUnexplained">True when no set of faults explains it too.</param>
public sealed record ReadingPoint(ReadingSpec Spec, string Measured, double Deviations, string WithFaults, bool IsUnexplained, bool Jumped)
{
    /// <summary>True when it lies outside what 95 % of sound units show.</summary>
    public bool IsOff => Jumped || Math.Abs(Deviations) > 1.96;

    /// <summary>"normal", "low", "high", "jumps".</summary>
    public string Side =>
        Jumped ? "jumps"
        : !IsOff ? "normal"
        : Deviations < 0 ? "low"
        : "high";
}
