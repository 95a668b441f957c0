using System.Text.Json.Serialization;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>A limit with where it comes from.</summary>
/// <param name="Min">The least; null for none.</param>
/// <param name="Max">The most; null for none.</param>
/// <param name="Unit">Of both.</param>
/// <param name="Source">Who says so.</param>
/// <param name="Edition">Of the source.</param>
/// <param name="Clause">In the source.</param>
public sealed record TestLimit(double? Min, double? Max, string Unit, string Source, string Edition, string Clause)
{
    /// <summary>Reads its fields.</summary>
    internal static TestLimit Read(QuestionFields question)
    {
        if (question.NeededPart("limit", "{ \"min\": …, \"max\": …, \"unit\": …, \"source\": … }") is not { } fields)
            return new(0, null, "", "", "", "");
        var (min, max) = (fields.Optional("min", NumberRange.Any), fields.Optional("max", NumberRange.Any));
        if (!fields.Has("min") && !fields.Has("max"))
            fields.Report("min", "is missing, and max too", "give at least one of them");
        if (min >= max)
            fields.Report("min", "is not below max", "the least is below the most");
        return new(min, max, fields.Word("unit", ""), fields.Word("source", ""), fields.Word("edition", ""), fields.Word("clause", ""));
    }

    /// <summary>In words: <c>at least 18 V</c>, <c>12.5 to 16.3 mm</c>.</summary>
    [JsonIgnore]
    public string Words
    {
        get
        {
            var unit = Unit.Length > 0 ? " " + Unit : "";
            return Min is { } low && Max is { } high ? FormattableString.Invariant($"{low:G6} to {high:G6}{unit}")
                : Min is { } least ? FormattableString.Invariant($"at least {least:G6}{unit}")
                : FormattableString.Invariant($"at most {Max:G6}{unit}");
        }
    }
}
