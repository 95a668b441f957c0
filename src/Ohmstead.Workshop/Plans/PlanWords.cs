using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Plans;

/// <summary>How a plan speaks of minutes.</summary>
public static class PlanWords
{
    /// <summary>"72–104 min"; one number where both round to the same.</summary>
    public static string Minutes(double low, double high) =>
        Math.Round(low) == Math.Round(high)
            ? Counted.Minutes(low)
            : $"{ValueText.Plain(Math.Round(low))}–{ValueText.Plain(Math.Round(high))} min";

    /// <summary>What the minutes of a line rest on: how many earlier jobs, and how wide they were; empty where none was logged.</summary>
    public static string Logged(PlanLine line)
    {
        var counts = line.Steps.Where(s => !s.Records.IsEmpty).ToList();
        if (counts.Count == 0)
            return "";
        if (line.Steps.Length > 1)
            return $"your log knows {Counted.Share(counts.Count, line.Steps.Length, "step")}";
        var records = counts[0].Records;
        return $"your log: {Counted.Of(records.Length, "job")}, {Minutes(records.Min(), records.Max())}";
    }
}
