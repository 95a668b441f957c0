using System.Text.Json.Nodes;

namespace Ohmstead.Electrical.Tests;

/// <summary>
/// One published case from <c>tests/Reference/published</c>: what was given, what came out, and where it was printed. Its mark
/// says how well the number is known: SEEN in a source text, from MEMORY, or common PRACTICE without a source (a closed form
/// worked out for the purpose).
/// </summary>
internal sealed class Published
{
    private readonly JsonObject row;

    private Published(JsonObject row) => this.row = row;

    public string Id => row["id"]!.GetValue<string>();

    public string Source => row["source"]!.GetValue<string>();

    public string Mark => row["mark"]!.GetValue<string>();

    /// <summary>A row of a topic's file.</summary>
    public static Published Case(string topic, string id) =>
        new(
            Rows(topic).SingleOrDefault(r => r["id"]!.GetValue<string>() == id)
                ?? throw new ArgumentException($"{topic} has no row {id}", nameof(id))
        );

    /// <summary>All rows of a topic whose id begins with a text.</summary>
    public static IEnumerable<Published> All(string topic, string begin = "") =>
        Rows(topic).Where(r => r["id"]!.GetValue<string>().StartsWith(begin, StringComparison.Ordinal)).Select(r => new Published(r));

    /// <summary>An input of the case.</summary>
    public double Given(string name) => Number("given", name);

    /// <summary>An input of the case that is a word.</summary>
    public string Word(string name) => row["given"]![name]!.GetValue<string>();

    public bool Gives(string name) => row["given"]!.AsObject().ContainsKey(name);

    /// <summary>A published outcome of the case.</summary>
    public double Expected(string name) => Number("expected", name);

    public bool Expects(string name) => row["expected"]!.AsObject().ContainsKey(name);

    /// <summary>What the source prints although it is wrong.</summary>
    public double Misprinted(string name) => Number("misprinted", name);

    public bool IsMisprinted => row.ContainsKey("misprinted");

    /// <summary>Holds a value of ours against a published one; the tolerance is that of the printed figure unless stated.</summary>
    /// <param name="within">Largest difference in the figure's own unit.</param>
    public void Agrees(string name, double ours, double within)
    {
        var published = Expected(name);
        Assert.True(
            Math.Abs(ours - published) <= within,
            FormattableString.Invariant($"{Id} {name}: ours {ours:G6}, published {published:G6} (± {within:G3}; {Mark}, {Source})")
        );
    }

    private double Number(string part, string name) =>
        (row[part]?[name] ?? throw new ArgumentException($"{Id} has no {part}.{name}", nameof(name))).GetValue<double>();

    private static IEnumerable<JsonObject> Rows(string topic) =>
        Reference.Json($"tests/Reference/published/{topic}.json")["cases"]!.AsArray().Select(r => r!.AsObject());
}
