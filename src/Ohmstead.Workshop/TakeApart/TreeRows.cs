using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.TakeApart;

/// <summary>The take-apart tree as rows under one another, what hangs on nothing first, and the arcs that join them.</summary>
/// <param name="Rows">The steps; each stands below all that it hangs on.</param>
/// <param name="Arcs">From each step to what it hangs on.</param>
public sealed record TreeRows(ImmutableArray<TakeApartStep> Rows, ImmutableArray<TreeArc> Arcs)
{
    /// <summary>Width of what is drawn beside the rows [px].</summary>
    public const double Rail = 92;

    /// <summary>The line that the marks stand on [px].</summary>
    public const double Line = 80;

    private const double RowHeight = 52;

    /// <summary>Nothing.</summary>
    public static TreeRows Empty { get; } = new([], []);

    /// <summary>Height of the whole [px].</summary>
    public double Height => RowHeight * Rows.Length;

    /// <summary>Height of a row's middle [px].</summary>
    public static double Middle(int row) => (row + 0.5) * RowHeight;

    /// <summary>Lays the steps out: each as far up as its needs let it, so that what belongs together stays near.</summary>
    /// <param name="way">Ids of the steps of the way: arcs between them are on it.</param>
    public static TreeRows Of(ImmutableArray<TakeApartStep> steps, IReadOnlySet<string> way)
    {
        var rows = new List<TakeApartStep>();
        void Place(TakeApartStep step)
        {
            if (rows.Contains(step))
                return;
            foreach (var id in step.After.Concat(step.AfterAny.SelectMany(g => g)))
                if (steps.FirstOrDefault(s => s.Id == id) is { } before)
                    Place(before);
            if (!rows.Contains(step))
                rows.Add(step);
        }
        foreach (var step in steps)
            Place(step);
        var numbers = rows.Select((s, n) => (s.Id, n)).ToDictionary(p => p.Id, p => p.n, StringComparer.Ordinal);
        var arcs = rows.SelectMany(
            (s, n) =>
                s
                    .After.Select(id => (id, IsEither: false))
                    .Concat(s.AfterAny.SelectMany(g => g).Select(id => (id, IsEither: true)))
                    .Where(a => numbers.ContainsKey(a.id))
                    .Select(a => new TreeArc(Path(numbers[a.id], n), a.IsEither, way.Contains(s.Id) && way.Contains(a.id)))
        );
        return new TreeRows([.. rows], [.. arcs.OrderBy(a => a.IsOnWay)]);
    }

    private static string Path(int from, int to)
    {
        var bulge = Line - 8 - Math.Min(24 * Math.Sqrt(Math.Abs(to - from)), Line - 12);
        return string.Create(
            CultureInfo.InvariantCulture,
            $"M{Line - 9} {Middle(from):0.#}C{bulge:0.#} {Middle(from):0.#} {bulge:0.#} {Middle(to):0.#} {Line - 9} {Middle(to):0.#}"
        );
    }
}

/// <summary>What joins two rows.</summary>
/// <param name="Path">As an SVG path.</param>
/// <param name="IsEither">True where one of several is enough.</param>
/// <param name="IsOnWay">True when both steps are on the way.</param>
public sealed record TreeArc(string Path, bool IsEither, bool IsOnWay);
