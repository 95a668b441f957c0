using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Ohmstead.Architecture.Tests;

/// <summary>
/// The background draws a screen anew at any moment, and what was found before that can no longer be pressed. So whoever tests a screen
/// finds and acts inside one <c>Do</c> or <c>DoAsync</c>, which lets nothing be drawn in between.
/// </summary>
public partial class ScreenActTests
{
    [Fact]
    public void A_test_finds_and_acts_in_one_go()
    {
        (string File, InvocationExpressionSyntax Act)[] acts =
        [
            .. from file in Repository.Files("tests/Ohmstead.App.Tests", "*.cs") from act in Acts(Repository.Read(file)) select (file, act),
        ];
        Assert.True(acts.Length > 200, $"Only {acts.Length} acts were looked at.");
        Findings.None(
            acts.Where(a => !IsInOneGo(a.Act))
                .Select(a => FormattableString.Invariant($"{a.File}:{Line(a.Act)}: put this into Do or DoAsync: {a.Act.ToFullString()}"))
        );
    }

    /// <summary>The rule sees what it forbids.</summary>
    [Theory]
    [InlineData("page.FindAll(\"button\").Single().Click();")]
    [InlineData("await page.Find(\"form\").SubmitAsync();")]
    [InlineData("page.WaitForElement(\"#name\").Change(\"A\");")]
    [InlineData("await page.InvokeAsync(() => page.Find(\"b\").Click());")]
    [InlineData("page.Find(\"b\")?.TriggerEvent(\"onpointerup\", new());")]
    [InlineData("Form().Submit();")]
    [InlineData("var row = page.Find(\"li\"); page.Do(() => row.QuerySelector(\"b\")!.Click());")]
    [InlineData("var rows = page.FindAll(\"li\"); await page.DoAsync(() => rows[1].ClickAsync());")]
    public void What_is_found_and_acted_upon_apart_is_told(string code) => Assert.False(IsInOneGo(Assert.Single(Acts(code))));

    [Theory]
    [InlineData("page.Do(() => page.FindAll(\"button\").Single().Click());")]
    [InlineData("await page.DoAsync(() => page.Find(\"form\").SubmitAsync());")]
    [InlineData("page.Do(() => { var box = page.Find(\"i\"); box.Change(box.TextContent); });")]
    [InlineData("page.Do(() => Row(page, \"Primary\").QuerySelector(\"b\")!.Click());")]
    [InlineData("page.Do(() => page.FindAll(\"i\")[1].Change(true));")]
    public void What_is_found_and_acted_upon_in_one_go_passes(string code) => Assert.True(IsInOneGo(Assert.Single(Acts(code))));

    [Fact]
    public void A_method_of_a_type_is_no_act_upon_a_screen() => Assert.Empty(Acts("await TypeDates.ChangeAsync(bench, d => d);"));

    private static IEnumerable<InvocationExpressionSyntax> Acts(string code) =>
        CSharpSyntaxTree
            .ParseText(code)
            .GetRoot()
            .DescendantNodes()
            .OfType<InvocationExpressionSyntax>()
            .Where(call => ActName().IsMatch(NameOf(call)) && !IsOfAType(call));

    private static string NameOf(InvocationExpressionSyntax call) =>
        call.Expression switch
        {
            MemberAccessExpressionSyntax member => member.Name.Identifier.Text,
            MemberBindingExpressionSyntax member => member.Name.Identifier.Text,
            _ => "",
        };

    private static bool IsOfAType(InvocationExpressionSyntax call) =>
        call.Expression is MemberAccessExpressionSyntax { Expression: IdentifierNameSyntax name } && char.IsUpper(name.Identifier.Text[0]);

    private static bool IsInOneGo(InvocationExpressionSyntax act) =>
        act.Ancestors()
            .OfType<LambdaExpressionSyntax>()
            .Any(turn =>
                turn.Parent is ArgumentSyntax { Parent.Parent: InvocationExpressionSyntax call }
                && NameOf(call) is "Do" or "DoAsync"
                && act.Expression is MemberAccessExpressionSyntax member
                && IsFoundIn(turn, member.Expression)
            );

    /// <summary>What is acted upon is looked for inside, or is a variable that begins inside.</summary>
    private static bool IsFoundIn(LambdaExpressionSyntax turn, ExpressionSyntax acted) =>
        acted switch
        {
            InvocationExpressionSyntax { Expression: IdentifierNameSyntax } => true,
            InvocationExpressionSyntax call when NameOf(call) is "Find" or "FindAll" => true,
            InvocationExpressionSyntax call => IsFoundIn(turn, call.Expression),
            MemberAccessExpressionSyntax member => IsFoundIn(turn, member.Expression),
            ElementAccessExpressionSyntax item => IsFoundIn(turn, item.Expression),
            PostfixUnaryExpressionSyntax sure => IsFoundIn(turn, sure.Operand),
            IdentifierNameSyntax name => turn.DescendantNodes()
                .OfType<VariableDeclaratorSyntax>()
                .Any(begun => begun.Identifier.Text == name.Identifier.Text),
            _ => false,
        };

    private static int Line(SyntaxNode node) => node.GetLocation().GetLineSpan().StartLinePosition.Line + 1;

    [GeneratedRegex(
        "^(Click|DoubleClick|ContextMenu|Change|Input|Submit|Invalid|Focus|FocusIn|FocusOut|Blur|Toggle|Paste|Drop|Scroll|Wheel"
            + "|(Key|Mouse|Pointer|Touch|Drag)[A-Z][a-z]+|TriggerEvent)(Async)?$"
    )]
    private static partial Regex ActName();
}
