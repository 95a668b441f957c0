using System.Globalization;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>So many of so many.</summary>
internal readonly record struct Share(int Count, int Of)
{
    /// <summary>The share; NaN of nothing.</summary>
    public double Value => Count / (double)Of;

    public Share With(bool counts) => With(counts ? 1 : 0, 1);

    public Share With(int count, int of) => new(Count + count, Of + of);

    /// <inheritdoc/>
    public override string ToString() => Of == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{Count}/{Of}");
}
