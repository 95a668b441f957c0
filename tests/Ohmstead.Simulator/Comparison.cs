using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Compares predicted values with given ones, quantity by quantity.</summary>
internal sealed class Comparison
{
    private readonly Dictionary<string, List<(double Relative, double Absolute, string Where)>> deviations = new(StringComparer.Ordinal);

    public List<string> Different { get; } = [];

    public void Add(string quantity, string where, JsonNode given, JsonNode found)
    {
        bool givenOpen = given.GetValueKind() == System.Text.Json.JsonValueKind.String;
        bool foundOpen = found.GetValueKind() == System.Text.Json.JsonValueKind.String;
        if (givenOpen || foundOpen)
        {
            if (givenOpen != foundOpen)
                Different.Add($"{where}: given {given}, found {found}");
            return;
        }
        (double one, double other) = (given.GetValue<double>(), found.GetValue<double>());
        double off = Math.Abs(one - other);
        if (!deviations.TryGetValue(quantity, out var list))
            deviations[quantity] = list = [];
        list.Add(
            (
                off / Math.Max(Math.Max(Math.Abs(one), Math.Abs(other)), Least(quantity)),
                off,
                $"{where}: given {one.Text()}, found {other.Text()}"
            )
        );
    }

    public IEnumerable<string> Lines(int worst)
    {
        foreach ((string quantity, var list) in deviations)
        {
            yield return $"{quantity} ({list.Count.Text()} values)";
            foreach (var entry in list.OrderByDescending(entry => entry.Relative).Take(worst))
                yield return $"  {(100 * entry.Relative).Round(4)} %  {entry.Where}";
        }
        foreach (string line in Different)
            yield return line;
    }

    /// <summary>Below this a difference is compared absolutely: a tenth of a meter's floor.</summary>
    private static double Least(string quantity) =>
        quantity switch
        {
            "ac-volts" or "dc-volts" => 3e-3,
            "ac-amps" => 1e-3,
            "watts" => 0.05,
            "ohms" => 5e-3,
            _ => 2e3,
        };
}
