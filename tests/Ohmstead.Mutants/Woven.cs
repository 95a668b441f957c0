using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace Ohmstead.Mutants;

/// <summary>A file with all its mistakes woven in, each asleep until its number is called: one build serves them all.</summary>
internal sealed class Woven(IReadOnlyDictionary<SyntaxNode, List<(int Number, Place Place)>> places) : CSharpSyntaxRewriter
{
    public const string Mark = "mistake";

    private static readonly System.Globalization.CultureInfo Invariant = System.Globalization.CultureInfo.InvariantCulture;

    /// <summary>What the woven files ask; <see cref="Worker"/> sets which mistake is awake.</summary>
    public static string Switch(int count) =>
        $$"""
            internal static class Mistake
            {
                public static int Awake = {{Worker.Asleep.ToString(Invariant)}};
                public static readonly int[] Came = new int[{{count.ToString(Invariant)}}];

                public static bool Is(int number)
                {
                    if (Awake == {{Worker.Counted.ToString(Invariant)}})
                        System.Threading.Interlocked.Increment(ref Came[number]);
                    return number == Awake;
                }
            }
            """;

    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        var visited = base.Visit(node);
        if (node is null || visited is null || !places.TryGetValue(node, out var here))
            return visited;
        foreach (var (number, place) in here)
            visited = Wrap(visited, place.Planted(visited), number)
                .WithAdditionalAnnotations(new SyntaxAnnotation(Mark, number.ToString(Invariant)));
        return visited;
    }

    private static SyntaxNode Wrap(SyntaxNode node, SyntaxNode? planted, int number)
    {
        var isOn = InvocationExpression(
            MemberAccessExpression(
                SyntaxKind.SimpleMemberAccessExpression,
                AliasQualifiedName(IdentifierName(Token(SyntaxKind.GlobalKeyword)), IdentifierName("Mistake")),
                IdentifierName("Is")
            ),
            ArgumentList(SingletonSeparatedList(Argument(LiteralExpression(SyntaxKind.NumericLiteralExpression, Literal(number)))))
        );
        if (node is ExpressionSyntax expression)
            return ParenthesizedExpression(
                ConditionalExpression(isOn, ParenthesizedExpression((ExpressionSyntax)planted!), ParenthesizedExpression(expression))
            );
        var statement = Block((StatementSyntax)node);
        return planted is null
            ? IfStatement(PrefixUnaryExpression(SyntaxKind.LogicalNotExpression, isOn), statement)
            : IfStatement(isOn, Block((StatementSyntax)planted), ElseClause(statement));
    }
}
