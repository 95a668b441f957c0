using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using static Microsoft.CodeAnalysis.CSharp.SyntaxFactory;

namespace Ohmstead.Mutants;

/// <summary>
/// Every place of a file where a mistake of a kind that people make can be planted: a sign, a bound, a condition, a branch, a constant
/// twice as large, a root forgotten, the other end of an order, a line left out. What does not compile is taken out later.
/// </summary>
internal static class Places
{
    private static readonly Dictionary<SyntaxKind, (SyntaxKind To, SyntaxKind Token, string Sort)> Operators = new()
    {
        [SyntaxKind.AddExpression] = (SyntaxKind.SubtractExpression, SyntaxKind.MinusToken, "sum"),
        [SyntaxKind.SubtractExpression] = (SyntaxKind.AddExpression, SyntaxKind.PlusToken, "sum"),
        [SyntaxKind.MultiplyExpression] = (SyntaxKind.DivideExpression, SyntaxKind.SlashToken, "product"),
        [SyntaxKind.DivideExpression] = (SyntaxKind.MultiplyExpression, SyntaxKind.AsteriskToken, "product"),
        [SyntaxKind.LessThanExpression] = (SyntaxKind.LessThanOrEqualExpression, SyntaxKind.LessThanEqualsToken, "bound"),
        [SyntaxKind.LessThanOrEqualExpression] = (SyntaxKind.LessThanExpression, SyntaxKind.LessThanToken, "bound"),
        [SyntaxKind.GreaterThanExpression] = (SyntaxKind.GreaterThanOrEqualExpression, SyntaxKind.GreaterThanEqualsToken, "bound"),
        [SyntaxKind.GreaterThanOrEqualExpression] = (SyntaxKind.GreaterThanExpression, SyntaxKind.GreaterThanToken, "bound"),
        [SyntaxKind.EqualsExpression] = (SyntaxKind.NotEqualsExpression, SyntaxKind.ExclamationEqualsToken, "condition"),
        [SyntaxKind.NotEqualsExpression] = (SyntaxKind.EqualsExpression, SyntaxKind.EqualsEqualsToken, "condition"),
        [SyntaxKind.LogicalAndExpression] = (SyntaxKind.LogicalOrExpression, SyntaxKind.BarBarToken, "condition"),
        [SyntaxKind.LogicalOrExpression] = (SyntaxKind.LogicalAndExpression, SyntaxKind.AmpersandAmpersandToken, "condition"),
    };

    private static readonly Dictionary<SyntaxKind, (SyntaxKind To, SyntaxKind Token)> Assignments = new()
    {
        [SyntaxKind.AddAssignmentExpression] = (SyntaxKind.SubtractAssignmentExpression, SyntaxKind.MinusEqualsToken),
        [SyntaxKind.SubtractAssignmentExpression] = (SyntaxKind.AddAssignmentExpression, SyntaxKind.PlusEqualsToken),
        [SyntaxKind.MultiplyAssignmentExpression] = (SyntaxKind.DivideAssignmentExpression, SyntaxKind.SlashEqualsToken),
        [SyntaxKind.DivideAssignmentExpression] = (SyntaxKind.MultiplyAssignmentExpression, SyntaxKind.AsteriskEqualsToken),
    };

    private static readonly Dictionary<string, string> Calls = new(StringComparer.Ordinal)
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Any"] = "All",
        ["All"] = "Any",
        ["First"] = "Last",
        ["Last"] = "First",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
    };

    /// <param name="folder">Folder of the core.</param>
    /// <param name="file">Its path from the core's own folder.</param>
    /// <param name="model">The file as the compiler understands it.</param>
    public static IEnumerable<Place> Of(string folder, string file, SemanticModel model)
    {
        foreach (var node in model.SyntaxTree.GetRoot().DescendantNodes(n => n is not AttributeListSyntax))
        foreach (var (sort, planted) in In(node, model))
            yield return new Place(folder, file, node, sort, planted);
    }

    private static IEnumerable<(string Sort, Func<SyntaxNode, SyntaxNode?> Planted)> In(SyntaxNode node, SemanticModel model)
    {
        switch (node)
        {
            case BinaryExpressionSyntax b when Operators.TryGetValue(b.Kind(), out var to):
                yield return (
                    to.Sort,
                    n => BinaryExpression(to.To, ((BinaryExpressionSyntax)n).Left, Token(to.Token), ((BinaryExpressionSyntax)n).Right)
                );
                break;
            case PrefixUnaryExpressionSyntax p when p.IsKind(SyntaxKind.LogicalNotExpression) || p.IsKind(SyntaxKind.UnaryMinusExpression):
                yield return ("sign", n => ((PrefixUnaryExpressionSyntax)n).Operand);
                break;
            case ConditionalExpressionSyntax:
                yield return (
                    "branch",
                    n => ((ConditionalExpressionSyntax)n) is var c ? c.WithWhenTrue(c.WhenFalse).WithWhenFalse(c.WhenTrue) : null
                );
                break;
            case LiteralExpressionSyntax l when l.IsKind(SyntaxKind.NumericLiteralExpression):
                yield return (
                    "literal",
                    _ => Doubled(l, Convert.ToDouble(l.Token.Value, System.Globalization.CultureInfo.InvariantCulture) == 0)
                );
                break;
            case LiteralExpressionSyntax l when l.IsKind(SyntaxKind.TrueLiteralExpression) || l.IsKind(SyntaxKind.FalseLiteralExpression):
                yield return (
                    "literal",
                    _ =>
                        LiteralExpression(
                            l.IsKind(SyntaxKind.TrueLiteralExpression)
                                ? SyntaxKind.FalseLiteralExpression
                                : SyntaxKind.TrueLiteralExpression
                        )
                );
                break;
            case IdentifierNameSyntax i
                when i.Parent is not MemberAccessExpressionSyntax && IsNumberConstant(model.GetSymbolInfo(i).Symbol):
                yield return ("constant", _ => Doubled(i, isZero: false));
                break;
            case InvocationExpressionSyntax { Expression: MemberAccessExpressionSyntax m } call:
                if (m.Name.Identifier.Text == "Sqrt" && call.ArgumentList.Arguments.Count == 1)
                    yield return ("root", n => ((InvocationExpressionSyntax)n).ArgumentList.Arguments[0].Expression);
                if (m.Name is IdentifierNameSyntax && Calls.TryGetValue(m.Name.Identifier.Text, out var other))
                    yield return (
                        "call",
                        n =>
                            ((InvocationExpressionSyntax)n) is var c
                                ? c.WithExpression(((MemberAccessExpressionSyntax)c.Expression).WithName(IdentifierName(other)))
                                : null
                    );
                break;
            case ExpressionStatementSyntax { Expression: AssignmentExpressionSyntax a } when Assignments.TryGetValue(a.Kind(), out var to):
                yield return (
                    "sum",
                    n =>
                        ((ExpressionStatementSyntax)n) is var s && s.Expression is AssignmentExpressionSyntax x
                            ? s.WithExpression(AssignmentExpression(to.To, x.Left, Token(to.Token), x.Right))
                            : null
                );
                break;
            case ExpressionStatementSyntax { Expression: AssignmentExpressionSyntax or InvocationExpressionSyntax }:
                yield return ("line", _ => null);
                break;
        }
    }

    private static ParenthesizedExpressionSyntax Doubled(ExpressionSyntax value, bool isZero) =>
        ParenthesizedExpression(
            isZero
                ? BinaryExpression(SyntaxKind.AddExpression, value, Number(1))
                : BinaryExpression(SyntaxKind.MultiplyExpression, Number(2), value)
        );

    private static LiteralExpressionSyntax Number(int value) => LiteralExpression(SyntaxKind.NumericLiteralExpression, Literal(value));

    private static bool IsNumberConstant(ISymbol? symbol) =>
        symbol switch
        {
            IFieldSymbol { IsConst: true, ContainingType.TypeKind: not TypeKind.Enum } f => IsNumber(f.Type),
            ILocalSymbol { IsConst: true } l => IsNumber(l.Type),
            _ => false,
        };

    private static bool IsNumber(ITypeSymbol type) =>
        type.SpecialType is SpecialType.System_Int32 or SpecialType.System_Int64 or SpecialType.System_Double;
}
