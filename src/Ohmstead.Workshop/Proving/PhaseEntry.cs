using Ohmstead.Electrical.Reckoning.Proving;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Proving;

/// <summary>Two units on one layout, from what was typed: the question <c>together</c>.</summary>
public static class PhaseEntry
{
    private const double MostVolts = 500;

    /// <summary>Behind a post of a unit of this size, where nobody measured it [Ω]; common practice, no source.</summary>
    private const double UsualSourceOhms = 0.3;

    /// <summary>What a train or a wire across the gap has [Ω].</summary>
    private const double PathOhms = 0.05;

    /// <summary>Judges three voltages as typed.</summary>
    /// <param name="volts">Of the first unit, of the other, and from hot post to hot post.</param>
    /// <param name="line">The line voltage of both.</param>
    /// <param name="oneWay">Whose plug goes in one way only.</param>
    /// <returns>The answer, or what is wrong.</returns>
    public static (TogetherAnswer? Answer, string Problem) Judge(
        string tag,
        string other,
        IReadOnlyList<string> volts,
        string line,
        IReadOnlyList<bool> oneWay
    )
    {
        var (a, b) = (tag.Trim(), other.Trim());
        if (b.Length == 0)
            return (null, "Say what the other unit is called.");
        if (a == b)
            return (null, "Give the other unit another name.");
        string[] named = [$"Volts, {a}", $"Volts, {b}", "Volts, hot post to hot post", "Line voltage"];
        var typed = volts.Append(line).Select((text, n) => ShopEdit.Number(text, n == 2 ? 0 : 0.1, MostVolts)).ToList();
        var wrong = typed.FindIndex(t => t.Problem.Length > 0);
        if (wrong >= 0)
            return (null, $"{named[wrong]}: {typed[wrong].Problem}");
        JoinedUnit Unit(string id, int n) => new(id, typed[n].Value, typed[3].Value, UsualSourceOhms, oneWay[n]);
        var question = new Together([Unit(a, 0), Unit(b, 1)], [new(a, b, typed[2].Value)], 0.8, 0.03, [new(a, b, PathOhms)]);
        return ((TogetherAnswer)question.Answer(), "");
    }
}
