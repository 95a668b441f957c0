using System.Text.RegularExpressions;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Ohmstead.Architecture.Tests;

/// <summary>What is long or crowded in the code under a folder, each by its place; migrations, which a program writes, not among it.</summary>
internal sealed partial class Counts
{
    public const int MostFileLines = 250;
    public const int MostMethodLines = 40;
    public const int MostParameters = 6;

    private readonly List<string> files = [];
    private readonly List<string> methods = [];
    private readonly List<string> parameters = [];

    public Counts(string root, string folder)
    {
        foreach (
            string file in Repository.Files(root, folder, "*.cs").Where(file => !file.Contains("/Migrations/", StringComparison.Ordinal))
        )
        {
            string text = File.ReadAllText(Path.Combine(root, file));
            Look(file, text);
            Look(file, CSharpSyntaxTree.ParseText(text).GetRoot());
        }
        foreach (string file in Repository.Files(root, folder, "*.razor"))
        {
            Look(file, File.ReadAllText(Path.Combine(root, file)));
        }
    }

    /// <summary>Files of more than 250 lines.</summary>
    public IReadOnlyList<string> LongFiles => files;

    /// <summary>Methods, constructors and accessors of more than 40 lines, from the name to the last brace.</summary>
    public IReadOnlyList<string> LongMethods => methods;

    /// <summary>Methods, and constructors of what is no record, with more than six parameters.</summary>
    public IReadOnlyList<string> ManyParameters => parameters;

    public int FileCount { get; private set; }

    public int MethodCount { get; private set; }

    /// <summary>Lines that are neither empty nor a comment alone.</summary>
    public int CodeLines { get; private set; }

    private void Look(string file, string text)
    {
        string[] lines = text.TrimEnd().Split('\n');
        FileCount++;
        CodeLines += lines.Count(line => !NoCode().IsMatch(line));
        if (lines.Length > MostFileLines)
        {
            files.Add(FormattableString.Invariant($"{file}: {lines.Length}"));
        }
    }

    private void Look(string file, SyntaxNode root)
    {
        foreach (SyntaxNode node in root.DescendantNodes())
        {
            (SyntaxToken name, ParameterListSyntax? taken) = node switch
            {
                MethodDeclarationSyntax method => (method.Identifier, method.ParameterList),
                LocalFunctionStatementSyntax method => (method.Identifier, method.ParameterList),
                ConstructorDeclarationSyntax made => (made.Identifier, made.ParameterList),
                ClassDeclarationSyntax { ParameterList: { } list } type => (type.Identifier, list),
                AccessorDeclarationSyntax accessor => (accessor.Keyword, null),
                _ => default,
            };
            if (name == default)
            {
                continue;
            }
            MethodCount++;
            string place = $"{file}: {name.Text}";
            FileLinePositionSpan span = node.SyntaxTree.GetLineSpan(TextSpanFrom(name, node));
            int lines = span.EndLinePosition.Line - span.StartLinePosition.Line + 1;
            if (node is not TypeDeclarationSyntax && lines > MostMethodLines)
            {
                methods.Add(FormattableString.Invariant($"{place}: {lines}"));
            }
            if (taken?.Parameters.Count > MostParameters)
            {
                parameters.Add(FormattableString.Invariant($"{place}: {taken.Parameters.Count}"));
            }
        }
    }

    private static Microsoft.CodeAnalysis.Text.TextSpan TextSpanFrom(SyntaxToken name, SyntaxNode node) =>
        Microsoft.CodeAnalysis.Text.TextSpan.FromBounds(name.SpanStart, node.Span.End);

    [GeneratedRegex(@"^\s*(//.*)?$")]
    private static partial Regex NoCode();
}
