using System.Globalization;
using System.Text.Json.Serialization;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>So many of so many.</summary>
internal readonly record struct Share(int Count, int Of)
{
    /// <summary>The share; NaN of nothing.</summary>
    [JsonIgnore]
    public double Value => Count / (double)Of;

    /// <summary>With one more; null does not count.</summary>
    public Share With(bool? counts) => counts is { } does ? With(does ? 1 : 0, 1) : this;

    public Share With(int count, int of) => new(Count + count, Of + of);

    /// <inheritdoc/>
    public override string ToString() => Of == 0 ? "–" : string.Create(CultureInfo.InvariantCulture, $"{Count}/{Of}");
}
