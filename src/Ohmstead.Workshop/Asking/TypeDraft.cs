using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Asking;

/// <summary>From the answers, and from readings of units, to a type sheet: what the verb <c>draft</c> does with files.</summary>
public static class TypeDraft
{
    /// <summary>Of a sheet that is not kept yet; whoever keeps it knows better.</summary>
    private const int FirstVersion = 1;

    /// <summary>What the answers stand for, or what is wrong with them, each at its question. Up to a second.</summary>
    public static (OutlineKinds? Kinds, AskedOutline Asked, ImmutableArray<AnswerProblem> Problems) Read(KindAnswers answers, string id)
    {
        var asked = AnswerOutline.Of(answers, id);
        var read = OutlineFile.Read(asked.Text);
        var problems = AnswerProblems.Of(answers, asked, read.Problems);
        return (problems.IsEmpty ? read.Value : null, asked, problems);
    }

    /// <summary>Drafts. Without units a second or so; with each unit some seconds more.</summary>
    /// <param name="units">Units of this type, faulty or not.</param>
    /// <param name="sound">Sound units of other benches; one that is among the units counts once.</param>
    public static DraftedType Run(
        OutlineKinds kinds,
        AskedOutline asked,
        IReadOnlyCollection<BenchUnit> units,
        Shop shop,
        DiagnosisOptions options,
        IReadOnlyCollection<SoundUnit>? sound = null
    )
    {
        var marks = units.Select(SoundUnit.MarkOf).ToHashSet(StringComparer.Ordinal);
        var others = (sound ?? []).Where(s => !marks.Contains(s.Mark)).ToList();
        var all = kinds
            .Kinds.Select(k =>
                (Kind: k, Units: Readings(k, units, shop).AddRange(others.Select(s => s.On(k.Sheet)).OfType<UnitReadings>()))
            )
            .ToList();
        // A choice that cannot have a reading that was taken is none.
        var most = all.Max(k => k.Units.Sum(u => u.Readings.Length));
        var draft = Drafter.Run(
            [.. all.Where(k => k.Units.Sum(u => u.Readings.Length) == most).Select(k => new KindReadings(k.Kind, k.Kind.Sheet, k.Units))],
            options
        );
        var taken = draft.Units.IsEmpty ? 0 : most;
        return new(
            draft.Sheet,
            new MadeType(
                asked.Text,
                new MadeFrom(FirstVersion, taken, draft.Units.Length),
                draft.Values,
                [.. draft.Wants.Select(w => new WantedNext(w.Spec.Id, w.Minutes, w.Fixes, w.RelativeErrorAfter))],
                Open(draft, asked)
            )
        );
    }

    private static ImmutableArray<UnitReadings> Readings(OutlineKind kind, IReadOnlyCollection<BenchUnit> units, Shop shop)
    {
        if (units.Count == 0)
            return [];
        var model = new UnitModel(kind.Sheet);
        return
        [
            .. units.Select(u => BenchReadings.Of(u, model, shop).Value).OfType<UnitReadings>().Where(r => r.Readings.Any(t => t.IsTaken)),
        ];
    }

    /// <summary>Of each unknown word what it may be, most probable first.</summary>
    private static ImmutableArray<OpenChoice> Open(Draft draft, AskedOutline asked) =>
        draft.Candidates.Length < 2
            ? []
            :
            [
                .. draft
                    .Candidates.SelectMany(c => c.Kind.Choices.Select(w => (Question: QuestionOf(asked, w.Key), w.Value, c.Probability)))
                    .GroupBy(w => (w.Question, w.Value))
                    .Select(g => new OpenChoice(g.Key.Question, g.Key.Value, g.Sum(w => w.Probability)))
                    .GroupBy(c => c.Question)
                    .Where(g => g.Count() > 1)
                    .SelectMany(g => g.OrderByDescending(c => c.Chance)),
            ];

    /// <summary>A path such as <c>blocks[7].in</c>.</summary>
    private static string QuestionOf(AskedOutline asked, string path)
    {
        var (start, end) = (path.IndexOf('[', StringComparison.Ordinal), path.IndexOf(']', StringComparison.Ordinal));
        var block = int.Parse(path.AsSpan(start + 1, end - start - 1), System.Globalization.CultureInfo.InvariantCulture);
        return path.EndsWith("].kind", StringComparison.Ordinal) ? asked.OfKind[block] : asked.Questions[block];
    }
}

/// <summary>A sheet that was drafted, and what it rests on.</summary>
public sealed record DraftedType(TypeSheet Sheet, MadeType Made);
