using Microsoft.CodeAnalysis;

namespace Ohmstead.Mutants;

/// <summary>A place of the core where a small mistake can be planted.</summary>
/// <param name="Folder">Folder of the core: "Diagnosis".</param>
/// <param name="File">From the core's own folder, with slashes.</param>
/// <param name="Node">What is changed.</param>
/// <param name="Sort">What is changed in it: "sum", "bound", "literal".</param>
/// <param name="Planted">The node with the mistake, made of the node as it is once the mistakes inside it are woven in; null: it is left out.</param>
internal sealed record Place(string Folder, string File, SyntaxNode Node, string Sort, Func<SyntaxNode, SyntaxNode?> Planted)
{
    private const int MostShown = 90;

    /// <summary>Which of the places of its file that read the same it is, from 1.</summary>
    public int Turn { get; init; } = 1;

    /// <summary>The same wherever in its file the text is moved to: what was found of it holds until the text changes.</summary>
    public string Id => Turn == 1 ? Text : FormattableString.Invariant($"{Text} #{Turn}");

    /// <summary>From 1.</summary>
    public int Line => Node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;

    private string Text => $"{File} {Sort}: {Shown(Node)} → {(Planted(Node) is { } planted ? Shown(planted) : "nothing")}";

    /// <summary>The same places, each with its turn.</summary>
    public static IEnumerable<Place> InTurn(IEnumerable<Place> places)
    {
        var turns = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var place in places)
            yield return place with
            {
                Turn = turns[place.Text] = turns.GetValueOrDefault(place.Text) + 1,
            };
    }

    private static string Shown(SyntaxNode node)
    {
        var text = string.Join(' ', node.NormalizeWhitespace().ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= MostShown ? text : text[..(MostShown - 1)] + "…";
    }
}
