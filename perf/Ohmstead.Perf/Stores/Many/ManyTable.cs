using System.Globalization;
using System.Text;
using Ohmstead.Perf.Benchmarks;

namespace Ohmstead.Perf.Stores.Many;

/// <summary>What was measured at several sizes on two stores: median and 95th of a hundred, and how each grows with the units.</summary>
internal sealed class ManyTable(int[] sizes, int runs)
{
    private const double MostPageMilliseconds = 100;

    private readonly List<(string Store, int Units, string What, string Unit, double[] Values)> all = [];
    private readonly List<string> broken = [];

    /// <param name="isBound">True where the bound of a page holds for it.</param>
    public void Put(string store, int units, string what, string unit, double[] values, bool isBound = false)
    {
        all.Add((store, units, what, unit, values));
        var p95 = Clock.Percentile(values, 0.95);
        var line = FormattableString.Invariant(
            $"{store}, {units} units, {what}: {Clock.Median(values):F1} {unit}, p95 {p95:F1} ({values.Length})"
        );
        Console.Error.WriteLine(line);
        if (isBound && p95 > MostPageMilliseconds)
            broken.Add(line);
    }

    /// <param name="words">What was measured, below the tables.</param>
    public int Report(string words)
    {
        var text = new StringBuilder();
        foreach (var store in all.GroupBy(v => v.Store))
        {
            text.AppendLine(store.Key == "folder" ? "**In a folder (SQLite)**\n" : "**In a database (PostgreSQL)**\n");
            text.Append("| what |").AppendJoin("", sizes.Select(s => FormattableString.Invariant($" {s:N0} units |")));
            text.AppendJoin("", Pairs.Select(p => FormattableString.Invariant($" grows as units^ ({p.From:N0} to {p.To:N0}) |")));
            text.Append("\n|---|").Insert(text.Length, "---|", sizes.Length + Pairs.Count()).AppendLine();
            foreach (var row in store.GroupBy(v => v.What))
            {
                text.Append(CultureInfo.InvariantCulture, $"| {row.Key} |");
                foreach (var size in sizes)
                    text.Append(CultureInfo.InvariantCulture, $" {Cell(row.Single(v => v.Units == size))} |");
                foreach (var (from, to) in Pairs)
                    text.Append(CultureInfo.InvariantCulture, $" {Exponent(row, from, to):F2} |");
                text.AppendLine();
            }
            text.AppendLine();
        }
        text.AppendLine(
            CultureInfo.InvariantCulture,
            $"Median, and in brackets what 95 of a hundred stay within; {runs} runs, fewer where it takes long and no bound is held against it. Start page, search, and a unit's pages: 95 of a hundred within {MostPageMilliseconds} ms. {words}"
        );
        return new Figures("many", text.ToString(), broken).Report();
    }

    private IEnumerable<(int From, int To)> Pairs => sizes.Zip(sizes.Skip(1));

    private static string Cell((string Store, int Units, string What, string Unit, double[] Values) value) =>
        value.Values.Length == 1
            ? FormattableString.Invariant($"{value.Values[0]:F1} {value.Unit}")
            : FormattableString.Invariant($"{Clock.Median(value.Values):F1} ({Clock.Percentile(value.Values, 0.95):F1}) {value.Unit}");

    private static double Exponent(IEnumerable<(string Store, int Units, string What, string Unit, double[] Values)> row, int from, int to)
    {
        double At(int size) => Clock.Median(row.Single(v => v.Units == size).Values);
        return Math.Log(At(to) / At(from)) / Math.Log((double)to / from);
    }
}
