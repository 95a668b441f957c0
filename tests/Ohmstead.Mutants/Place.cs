using Microsoft.CodeAnalysis;

namespace Ohmstead.Mutants;

/// <summary>A place of the core where a small mistake can be planted.</summary>
/// <param name="Folder">Folder of the core: "Diagnosis".</param>
/// <param name="File">From the core's own folder, with slashes.</param>
/// <param name="Line">From 1.</param>
/// <param name="Node">What is changed.</param>
/// <param name="Sort">What is changed in it: "sum", "bound", "literal".</param>
/// <param name="Planted">The node with the mistake, made of the node as it is once the mistakes inside it are woven in; null: it is left out.</param>
internal sealed record Place(string Folder, string File, int Line, SyntaxNode Node, string Sort, Func<SyntaxNode, SyntaxNode?> Planted)
{
    private const int MostShown = 90;

    /// <summary>The same for the same text at the same line: what was found of it holds until one of them changes.</summary>
    public string Id => FormattableString.Invariant($"{File}:{Line}:{Column} {Sort}: {Before} → {After}");

    private int Column => Node.GetLocation().GetLineSpan().StartLinePosition.Character + 1;

    private string Before => Shown(Node);

    private string After => Planted(Node) is { } planted ? Shown(planted) : "nothing";

    private static string Shown(SyntaxNode node)
    {
        var text = string.Join(' ', node.NormalizeWhitespace().ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return text.Length <= MostShown ? text : text[..(MostShown - 1)] + "…";
    }
}
