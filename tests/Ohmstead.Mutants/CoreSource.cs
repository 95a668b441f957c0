using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace Ohmstead.Mutants;

/// <summary>The source of the core, and the core built with mistakes woven in.</summary>
internal sealed class CoreSource
{
    private static readonly CSharpParseOptions Parse = new(LanguageVersion.Latest);

    private readonly string root;
    private readonly CSharpCompilation sound;

    /// <param name="repository">The folder of Ohmstead.slnx; the core must have been built there once (the compiler writes its global usings).</param>
    public CoreSource(string repository)
    {
        root = Path.Combine(repository, "src", "Ohmstead.Electrical");
        var generated = Path.Combine(root, "obj", "Release", "net10.0");
        var files = Directory
            .EnumerateFiles(root, "*.cs", SearchOption.AllDirectories)
            .Where(f =>
                !FromRoot(f).StartsWith("obj/", StringComparison.Ordinal) && !FromRoot(f).StartsWith("bin/", StringComparison.Ordinal)
            )
            .Concat(Directory.EnumerateFiles(generated, "*.cs", SearchOption.AllDirectories))
            .Order(StringComparer.Ordinal);
        var framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        sound = CSharpCompilation.Create(
            "Ohmstead.Electrical",
            files.Select(f => CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(f), System.Text.Encoding.UTF8), Parse, f)),
            Directory.EnumerateFiles(framework, "*.dll").Where(IsManaged).Select(f => MetadataReference.CreateFromFile(f)),
            new CSharpCompilationOptions(
                OutputKind.DynamicallyLinkedLibrary,
                optimizationLevel: OptimizationLevel.Release,
                nullableContextOptions: NullableContextOptions.Enable,
                deterministic: true
            )
        );
    }

    /// <summary>Every place of a folder, in the order of the files.</summary>
    public IReadOnlyList<Place> PlacesOf(string folder) =>
        [
            .. sound
                .SyntaxTrees.Where(t => FromRoot(t.FilePath).StartsWith(folder + "/", StringComparison.Ordinal))
                .SelectMany(t => Place.InTurn(Places.Of(folder, FromRoot(t.FilePath), sound.GetSemanticModel(t)))),
        ];

    /// <summary>Writes the core with these mistakes woven in; what does not compile is taken out.</summary>
    /// <returns>The mistakes that are in it, each at its number; null at the number of one that was taken out.</returns>
    public Place?[] Weave(IReadOnlyList<Place> places, string assembly)
    {
        var kept = places.Cast<Place?>().ToArray();
        while (true)
        {
            var woven = sound.ReplaceAll(kept).AddSyntaxTrees(CSharpSyntaxTree.ParseText(Woven.Switch(kept.Length), Parse));
            using var image = new MemoryStream();
            var built = woven.Emit(image);
            if (built.Success)
            {
                File.WriteAllBytes(assembly, image.ToArray());
                return kept;
            }
            var out_ = built
                .Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)
                .SelectMany(d => Behind(d, kept))
                .Distinct()
                .ToList();
            if (out_.Count == 0)
                throw new InvalidOperationException(built.Diagnostics.First(d => d.Severity == DiagnosticSeverity.Error).ToString());
            foreach (var number in out_)
                kept[number] = null;
        }
    }

    /// <summary>The mistake around an error; else all of the member in which it is.</summary>
    private static IEnumerable<int> Behind(Diagnostic error, Place?[] kept)
    {
        var node = error.Location.SourceTree?.GetRoot().FindNode(error.Location.SourceSpan);
        var around = node
            ?.AncestorsAndSelf()
            .Select(n => n.GetAnnotations(Woven.Mark).FirstOrDefault()?.Data)
            .FirstOrDefault(d => d is not null && kept[Number(d)] is not null);
        if (around is not null)
            return [Number(around)];
        var member = node?.AncestorsAndSelf().OfType<Microsoft.CodeAnalysis.CSharp.Syntax.MemberDeclarationSyntax>().FirstOrDefault();
        return member is null
            ? []
            : member
                .GetAnnotatedNodes(Woven.Mark)
                .SelectMany(n => n.GetAnnotations(Woven.Mark))
                .Select(a => Number(a.Data!))
                .Where(n => kept[n] is not null);
    }

    private static int Number(string mark) => int.Parse(mark, System.Globalization.CultureInfo.InvariantCulture);

    private string FromRoot(string file) => Path.GetRelativePath(root, file).Replace('\\', '/');

    private static bool IsManaged(string file) =>
        Path.GetFileName(file) is var n
        && (n.StartsWith("System.", StringComparison.Ordinal) || n is "netstandard.dll" or "mscorlib.dll")
        && !n.Contains(".Native", StringComparison.Ordinal);
}

internal static class Weaving
{
    /// <summary>The program with its files rewritten where mistakes lie.</summary>
    public static CSharpCompilation ReplaceAll(this CSharpCompilation sound, Place?[] places)
    {
        var byNode = places
            .Select((p, n) => (Place: p, Number: n))
            .Where(p => p.Place is not null)
            .GroupBy(p => p.Place!.Node)
            .ToDictionary(g => g.Key, g => g.Select(p => (p.Number, p.Place!)).ToList());
        foreach (var tree in byNode.Keys.Select(n => n.SyntaxTree).Distinct().ToList())
            sound = sound.ReplaceSyntaxTree(tree, tree.WithRootAndOptions(new Woven(byNode).Visit(tree.GetRoot())!, tree.Options));
        return sound;
    }
}
