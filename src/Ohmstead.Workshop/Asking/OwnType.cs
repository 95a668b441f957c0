using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.Workshop.Asking;

/// <summary>A type of the workshop's own: what was answered, the unit that waits for it, and what was made of it.</summary>
/// <param name="Unit">The unit whose type it is to become; null for none, or once it is.</param>
/// <param name="Made">What was made of it last; null before.</param>
/// <param name="Before">What earlier versions of its sheet rest on.</param>
public sealed record OwnType(KindAnswers Answers, Guid? Unit, MadeType? Made, ImmutableArray<MadeFrom> Before)
{
    /// <summary>Kind of the document that holds one; its id is the sheet's.</summary>
    public const string DocumentKind = "own-type";

    /// <summary>Sound units of other benches, which came in with a file.</summary>
    public ImmutableArray<SoundUnit> Sound { get; init; } = [];

    /// <summary>Id of one's own type that this one came in beside; empty for none.</summary>
    public string Beside { get; init; } = "";

    /// <summary>True where a person has put the take-apart steps right: another version of the sheet keeps them.</summary>
    public bool HasOwnSteps { get; init; }

    /// <summary>As it is kept.</summary>
    public static string Write(OwnType type) => JsonSerializer.Serialize(type, FactText.Options);

    /// <summary>From what was kept; null where it cannot be read.</summary>
    public static OwnType? Read(string text)
    {
        try
        {
            return JsonSerializer.Deserialize<OwnType>(text, FactText.Options) is { Answers: not null } type
                ? type with
                {
                    Before = type.Before.IsDefault ? [] : type.Before,
                    Sound = type.Sound.IsDefault ? [] : type.Sound,
                }
                : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>True where the answers were changed since the sheet was made. A type that came in under another id keeps the outline with its own.</summary>
    [JsonIgnore]
    public bool IsChanged => Made is not null && Made.Outline != AnswerOutline.Of(Answers, KindText.IdOf(Made.Outline)).Text;

    /// <summary>What a version of its sheet rests on; null where that is not kept.</summary>
    /// <param name="version">0 for the newest.</param>
    public MadeFrom? Of(int version) =>
        Made is not null && (version == 0 || version == Made.From.SheetVersion)
            ? Made.From
            : Before.LastOrDefault(b => b.SheetVersion == version);
}

/// <summary>What a version of a drafted sheet rests on.</summary>
/// <param name="Readings">How many readings gave numbers; 0 for the answers alone.</param>
/// <param name="Units">Of how many units they are.</param>
public sealed record MadeFrom(int SheetVersion, int Readings, int Units)
{
    /// <summary>Said wherever something is concluded from it.</summary>
    public string Words =>
        Readings == 0
            ? "This type was drafted from its plate and your answers. Bands are wide."
            : $"This type was drafted from its plate and {Ohmstead.Workshop.Words.Counted.Of(Readings, "reading")}. Bands are wide.";
}

/// <summary>What came of the answers, and of readings.</summary>
/// <param name="Outline">Text of the outline that it was made of.</param>
/// <param name="Values">Where each number comes from.</param>
/// <param name="Wants">What to read next on a unit of this type, best first.</param>
/// <param name="Open">What is not settled: a question, the answers that stay possible, each with its chance.</param>
public sealed record MadeType(
    string Outline,
    MadeFrom From,
    ImmutableArray<DraftedValue> Values,
    ImmutableArray<WantedNext> Wants,
    ImmutableArray<OpenChoice> Open
)
{
    /// <summary>What a sheet has of the readings to take next: plug out before plugged in; within each the best first.</summary>
    /// <param name="newest">The type as it is now.</param>
    public ImmutableArray<WantedNext> WantedOf(TypeSheet newest) =>
        [
            .. Wants
                .Select(w => (Wanted: w, Spec: newest.FindReading(w.Id)))
                .Where(w => w.Spec is not null)
                .OrderBy(w =>
                    BenchConditions.IsOnMains(newest, w.Spec!) ? 2
                    : w.Spec!.State.Source is null ? 0
                    : 1
                )
                .Select(w => w.Wanted),
        ];
}

/// <summary>A reading that would narrow a drafted sheet most.</summary>
/// <param name="Id">The sheet's id of it.</param>
public sealed record WantedNext(string Id, double Minutes, ImmutableArray<string> Fixes, double RelativeErrorAfter);

/// <summary>An answer that is still possible.</summary>
/// <param name="Question">Key of the question.</param>
/// <param name="Word">The answer.</param>
/// <param name="Chance">Its chance [0..1].</param>
public sealed record OpenChoice(string Question, string Word, double Chance);
