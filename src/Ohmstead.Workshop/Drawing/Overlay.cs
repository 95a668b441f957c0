using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Drawing;

/// <summary>What is laid over the drawing of a circuit: what is suspected, measured, set and renewed just now.</summary>
/// <param name="Suspicion">Chance [0..1] that an element or slider is at fault, by id. Below <see cref="Suspect.Least"/> nothing shows.</param>
/// <param name="Probe">The reading to take next, if there is one.</param>
/// <param name="Values">Values between pairs of terminals, as written text.</param>
/// <param name="Controls">Where controls stand; those not named are at rest, a throttle at 0.</param>
/// <param name="Lifted">Elements taken out: drawn dashed.</param>
/// <param name="Renewed">Elements that are new in this unit.</param>
public sealed record Overlay(
    ImmutableDictionary<string, double> Suspicion,
    ProbePair? Probe,
    ImmutableArray<PairValue> Values,
    ImmutableDictionary<string, ControlPosition> Controls,
    ImmutableHashSet<string> Lifted,
    ImmutableHashSet<string> Renewed
)
{
    /// <summary>What lies between the leads: drawn dark, all else pale. Null draws all alike.</summary>
    public MeasuredPath? Path { get; init; }

    /// <summary>The letter of the finding that sits on a part, by its id.</summary>
    public ImmutableDictionary<string, string> Tags { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>The bare circuit, its controls at rest.</summary>
    public static Overlay None { get; } =
        new(ImmutableDictionary<string, double>.Empty, null, [], ImmutableDictionary<string, ControlPosition>.Empty, [], []);

    /// <summary>The state in which a reading is taken: where its controls stand, what is lifted, where its probes go.</summary>
    /// <param name="expected">The band to expect, as text; may be empty.</param>
    /// <param name="measured">What was read, as text; empty before.</param>
    public static Overlay Of(TypeSheet sheet, ReadingSpec reading, string expected = "", string measured = "") =>
        None with
        {
            Probe = ProbeOf(reading, expected, measured),
            Path = MeasuredPath.Of(sheet, reading),
            Controls = reading.State.Controls,
            Lifted = reading.State.Lifted.ToImmutableHashSet(StringComparer.Ordinal),
        };

    private static ProbePair? ProbeOf(ReadingSpec reading, string expected, string measured) =>
        (reading.From, reading.State.Source) switch
        {
            ({ Length: > 0 }, _) => new(reading.From, reading.To, expected, measured),
            (_, { } source) => new(source.From, source.To, expected, measured),
            _ => null,
        };
}

/// <summary>Where the two leads go, and what to expect between them.</summary>
/// <param name="First">Terminal of the first (red) lead, a flag with the word red.</param>
/// <param name="Second">Terminal of the second (black) lead, a flag with the word black.</param>
/// <param name="Expected">The band, as text; may be empty.</param>
/// <param name="Measured">What was read, as text; empty before.</param>
public sealed record ProbePair(string First, string Second, string Expected, string Measured);

/// <summary>A value that belongs between two terminals.</summary>
public sealed record PairValue(string First, string Second, string Expected, string Measured);

/// <summary>Words and weights for a chance of being at fault.</summary>
public static class Suspect
{
    /// <summary>Below this nothing is shown: most elements of a sound unit stand there.</summary>
    public const double Least = 0.05;

    private const double Medium = 0.3;

    private const double High = 0.7;

    /// <summary>The role for a chance [0..1] of at least <see cref="Least"/>.</summary>
    public static Role RoleOf(double chance) =>
        chance >= High ? Role.SuspectHigh
        : chance >= Medium ? Role.SuspectMedium
        : Role.SuspectLow;

    /// <summary>The chance in words, so that color is never alone.</summary>
    public static string WordsOf(double chance) => $"{ValueText.SureOf(chance)}, {FigureOf(chance)}";

    /// <summary>The chance as a figure, for narrow places; there the shape around the sign speaks with it.</summary>
    public static string FigureOf(double chance) => ValueText.Percent(chance);
}
