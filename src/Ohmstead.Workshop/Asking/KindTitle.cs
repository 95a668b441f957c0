using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>What a type is called.</summary>
public static class KindTitle
{
    /// <summary>As the person calls it; else by what it has: "Single-throttle unit, 90 W".</summary>
    public static string Of(KindAnswers answers) => answers.Title.Trim() is { Length: > 0 } own ? own : Made(answers);

    /// <summary>By what it has.</summary>
    public static string Made(KindAnswers answers)
    {
        var unit = answers.ThrottleCount switch
        {
            0 => "Unit with fixed posts",
            1 => "Single-throttle unit",
            2 => "Twin-throttle unit",
            var n => $"Unit with {ValueText.Plain(n)} throttles",
        };
        var watts = answers.Watts.Trim();
        return $"{unit}{(answers.IsDirect ? ", DC" : "")}{(watts.Length is > 0 and < 8 ? $", {watts} W" : "")}";
    }
}
