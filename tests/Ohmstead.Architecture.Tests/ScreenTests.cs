using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Ohmstead.Architecture.Tests;

/// <summary>A screen shows; what is worked out is worked out in Workshop or Electrical, once, with its test there.</summary>
public class ScreenTests
{
    /// <summary>What adds up, picks the most, or reckons with times: <c>Sum</c> of rows is a figure like any other.</summary>
    private static readonly string[] Reckoning =
    [
        "Sum",
        "Average",
        "Aggregate",
        "MaxBy",
        "MinBy",
        "AddDays",
        "AddHours",
        "AddMinutes",
        "AddSeconds",
        "TotalDays",
        "TotalHours",
        "TotalMinutes",
        "TotalSeconds",
    ];

    /// <summary>Files that lay out a picture or a bar: places on it are products of shares and widths.</summary>
    private static readonly string[] Pictures =
    [
        "Components/PicturePlace.cs",
        "Screens/Days/DayChart.razor",
        "Screens/Findings/Deviations.razor",
        "Screens/Findings/SweepTable.razor",
        "Screens/LookingBack/YearBack.razor",
        "Screens/LookingBack/YearBar.razor",
        "Screens/Owner/YearsPicture.razor",
        "Screens/Readings/BandScale.razor",
        "Screens/Testing/HandsOff.razor",
        "Screens/Types/OwnTypePage.razor",
        "Screens/Types/SpreadPlot.razor",
    ];

    /// <summary>What is left, file by file, and what it is; nothing is added here without a reason.</summary>
    private static readonly string[] Left =
    [
        // Twice the pause before a page is tried again.
        "Components/PageCaught.razor: *",
        // Round and round through what it could be.
        "Screens/Proving/CheckVerdict.razor: %",
        // The later of two entries, said of two people who fill in one field.
        "Components/OtherEntries.razor: MaxBy",
        // The minute of a day, and minutes in all.
        "Screens/Days/BenchDay.razor: *",
        "Screens/Days/BenchDay.razor.cs: Sum",
        "Screens/Days/ShowDay.razor: *",
        // How long the one that waits longest has waited.
        "Screens/About/InMemory.razor: TotalSeconds",
        // Counts of readings for a heading.
        "Screens/Types/BesideOwn.razor: Sum",
        "Screens/Types/OwnTypePage.razor: Sum",
    ];

    [Fact]
    public void A_screen_neither_multiplies_nor_adds_up_but_to_lay_out_a_picture()
    {
        string[] files =
        [
            .. new[] { "Screens", "Components" }.SelectMany(f => Repository.Files($"src/Ohmstead.App/{f}", "*.*")).Where(IsCode),
        ];
        Assert.True(files.Length > 150, $"Only {files.Length} files were looked at.");
        var found = files.SelectMany(file => Of(file)).Distinct(StringComparer.Ordinal).ToList();
        Findings.None(found.Except(Left).Where(f => !Pictures.Contains(f.Split(": ")[0])));
        Findings.None(Left.Except(found).Select(f => $"{f}: is listed, and is there no more"));
        Findings.None(
            Pictures.Where(p => !found.Exists(f => f.StartsWith(p, StringComparison.Ordinal))).Select(p => $"{p}: lays out nothing")
        );
    }

    private static bool IsProduct(BinaryExpressionSyntax binary) =>
        binary.Kind() is SyntaxKind.MultiplyExpression or SyntaxKind.DivideExpression or SyntaxKind.ModuloExpression;

    /// <summary>Markup inside of a block is no C#: the stroke of <c>&lt;/p&gt;</c> or <c>/&gt;</c> divides nothing.</summary>
    private static bool IsTag(string code, int at) => code[at - 1] == '<' || code[at + 1] == '>';

    private static bool IsCode(string file) =>
        file.EndsWith(".razor", StringComparison.Ordinal) || file.EndsWith(".cs", StringComparison.Ordinal);

    private static IEnumerable<string> Of(string file)
    {
        var text = Repository.Read(file);
        var name = file["src/Ohmstead.App/".Length..];
        var code = file.EndsWith(".cs", StringComparison.Ordinal) ? text : $"class Code {CodeOf(text)}";
        var nodes = CSharpSyntaxTree.ParseText(code).GetRoot().DescendantNodes().ToList();
        foreach (var binary in nodes.OfType<BinaryExpressionSyntax>())
            if (IsProduct(binary) && !IsTag(code, binary.OperatorToken.SpanStart))
                yield return $"{name}: {binary.OperatorToken.Text}";
        // Those stand in the markup too.
        foreach (var word in Reckoning)
            if (text.Contains(word.StartsWith("Total", StringComparison.Ordinal) ? $".{word}" : $".{word}(", StringComparison.Ordinal))
                yield return $"{name}: {word}";
    }

    /// <summary>The block behind <c>@code</c>; an empty one where there is none.</summary>
    private static string CodeOf(string razor) =>
        razor.IndexOf("\n@code", StringComparison.Ordinal) is >= 0 and var at ? razor[(at + "\n@code".Length)..] : "{ }";
}
