using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace Ohmstead.Mutants;

/// <summary>A file with all its mistakes woven in, each asleep until its number is called: one build serves them all.</summary>
internal sealed class Woven(IReadOnlyDictionary<SyntaxNode, List<(int Number, Place Place)>> places) : CSharpSyntaxRewriter
{
    public const string Mark = "mistake";

    /// <summary>What the woven files ask, and where the tests write the processor time they took [ms] and the mistakes they came by.</summary>
    public static string Switch(int count) =>
        $$"""
            internal static class Mistake
            {
                private static readonly int on = int.Parse(System.Environment.GetEnvironmentVariable("MISTAKE") ?? "-1", System.Globalization.CultureInfo.InvariantCulture);
                private static readonly string? seenFile = System.Environment.GetEnvironmentVariable("MISTAKES_SEEN");
                private static readonly bool[]? seen = seenFile is null ? null : new bool[{{count.ToString(
                System.Globalization.CultureInfo.InvariantCulture
            )}}];

                static Mistake()
                {
                    if (seen is not null)
                        System.AppDomain.CurrentDomain.ProcessExit += (_, _) =>
                            System.IO.File.WriteAllText(seenFile!, (int)System.Environment.CpuUsage.TotalTime.TotalMilliseconds + string.Concat(System.Linq.Enumerable.Select(System.Linq.Enumerable.Where(System.Linq.Enumerable.Range(0, seen.Length), n => seen[n]), n => "\n" + n)));
                }

                public static bool Is(int number)
                {
                    if (seen is { } s) s[number] = true;
                    return number == on;
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
                .WithAdditionalAnnotations(new SyntaxAnnotation(Mark, number.ToString(System.Globalization.CultureInfo.InvariantCulture)));
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
