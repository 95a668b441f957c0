using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Asking;

/// <summary>Two sheets of one type, number by number.</summary>
/// <param name="Different">Those that differ by more than their doubts.</param>
/// <param name="Same">How many do not.</param>
public sealed record NumbersApart(ImmutableArray<NumberApart> Different, int Same)
{
    /// <summary>Two numbers differ where they are so many deviations apart: the ends of a central 95 %.</summary>
    private const double Deviations = 1.96;

    /// <summary>Nothing smaller is a difference: what rounding does.</summary>
    private const double LeastRelative = 0.01;

    /// <summary>Compares the numbers that both have.</summary>
    public static NumbersApart Of((TypeSheet Sheet, MadeType Made) mine, (TypeSheet Sheet, MadeType Made) theirs)
    {
        var other = TypeNumbers.Of(theirs.Sheet, theirs.Made).DistinctBy(n => n.Value.Path).ToDictionary(n => n.Value.Path);
        var both = TypeNumbers.Of(mine.Sheet, mine.Made).Where(n => other.ContainsKey(n.Value.Path)).ToList();
        ImmutableArray<NumberApart> different =
        [
            .. both.Where(n => AreApart(n, other[n.Value.Path])).Select(n => new NumberApart(n.Name, n.Figure, other[n.Value.Path].Figure)),
        ];
        return new(different, both.Count - different.Length);
    }

    private static bool AreApart(TypeNumber a, TypeNumber b)
    {
        if (a.Value.Value <= 0 || b.Value.Value <= 0)
            return a.Value.Value != b.Value.Value;
        var doubt = Deviations * double.Hypot(a.Value.RelativeError, b.Value.RelativeError);
        return Math.Abs(Math.Log(a.Value.Value / b.Value.Value)) > Math.Max(doubt, LeastRelative);
    }
}

/// <summary>A number that two sheets of one type do not agree about.</summary>
/// <param name="Name">Of which part.</param>
/// <param name="Mine">One's own figure.</param>
/// <param name="Theirs">That of the file.</param>
public sealed record NumberApart(string Name, string Mine, string Theirs);
