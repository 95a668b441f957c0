using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.App.Commands;

/// <summary>The probable faults with bars and sizes, whole sets of them, and what cannot be told apart.</summary>
internal static class FaultBars
{
    private const double WorthShowing = 0.05;
    private const double WorthNaming = 0.02;
    private const int MostFaults = 12;
    private const int MostSets = 3;

    public static void Print(DiagnosisResult result)
    {
        Unexplained(result);
        var probable = result.Faults.Where(f => f.Probability >= WorthShowing).Take(MostFaults).ToList();
        if (probable.Count == 0) Console.WriteLine($"No fault of the list reaches {Shown.Percent(WorthShowing)}.");
        else Console.WriteLine(Style.Heading("Probable faults"));
        foreach (var f in probable)
            Console.WriteLine($"  {Shown.Bar(f.Probability)} {Shown.Percent(f.Probability),6}  {Shown.Fit(f.Mode.Element, 22)} {Shown.Fit(Words(f.Mode), 14)} {Size(f)}".TrimEnd());
        foreach (var group in result.Alike) Alike(group, result);
        Sets(result);
        Console.WriteLine();
    }

    /// <summary>A fault as it is said: <c>roller-2 worn</c>.</summary>
    public static string Say(FaultMode m) => $"{m.Element} {Words(m)}";

    private static string Words(FaultMode m) => m.Mode == "high-drop" ? "high drop" : m.Mode.Replace('-', ' ');

    private static void Unexplained(DiagnosisResult result)
    {
        if (result.Unexplained.Length == 0) return;
        var names = string.Join(", ", result.Unexplained);
        Console.WriteLine(Shown.Wrapped(result.IsExplained
            ? $"Taken as slips, since no set of faults fits them too: {names}. Read them again."
            : $"NOTHING IN THE LIST OF FAULTS EXPLAINS THESE READINGS. They disagree with the best that was found: {names}. Read them again; then think of what no sheet lists (another wiring, a part replaced, a unit of another kind). What follows is weak.", 0));
        Console.WriteLine();
    }

    private static void Alike(ImmutableArray<FaultMode> group, DiagnosisResult result)
    {
        var shown = group.Where(m => result.Faults.First(f => f.Mode == m).Probability >= WorthNaming).Select(Say).ToList();
        if (shown.Count > 1) Console.WriteLine(Shown.Wrapped($"Cannot be told apart by what was taken: {string.Join(", ", shown)}", 2));
    }

    private static void Sets(DiagnosisResult result)
    {
        var sets = result.Hypotheses.Take(MostSets).Where(h => h.Probability >= WorthShowing && h.Faults.Length > 0).ToList();
        if (result.SoundProbability >= WorthShowing)
            Console.WriteLine($"  None of the listed faults at all: {Shown.Percent(result.SoundProbability)}");
        if (sets.Count == 0) return;
        Console.WriteLine("  As whole sets:");
        foreach (var h in sets) Console.WriteLine(Shown.Wrapped($"{Shown.Percent(h.Probability)}  {string.Join(" + ", h.Faults.Select(Say))}", 4));
    }

    private static string Size(FaultProbability f)
    {
        if (f is not { Size: { } size, Low: { } low, High: { } high } || f.Mode.Size == SizeKind.None) return "";
        var unit = f.Mode.Size == SizeKind.WholeTurns ? "turns" : f.Mode.Mode == "drifted" ? "times its ohms" : "";
        return unit.Length > 0
            ? $"{Shown.Number(size)} {unit} ({Shown.Number(low)}–{Shown.Number(high)})"
            : $"{Shown.Value(size, Quantity.Ohms)} ({Shown.Band(low, high, Quantity.Ohms)})";
    }
}
