using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Ohmstead.Architecture.Tests;

/// <summary>What a project shows the others: a line for each public type, and for each public member below it, sorted.</summary>
internal static class Surface
{
    private static readonly SymbolDisplayFormat Name = new(
        SymbolDisplayGlobalNamespaceStyle.Omitted,
        SymbolDisplayTypeQualificationStyle.NameAndContainingTypesAndNamespaces,
        SymbolDisplayGenericsOptions.IncludeTypeParameters | SymbolDisplayGenericsOptions.IncludeTypeConstraints,
        SymbolDisplayMemberOptions.IncludeContainingType | SymbolDisplayMemberOptions.IncludeConstantValue,
        propertyStyle: SymbolDisplayPropertyStyle.ShowReadWriteDescriptor,
        miscellaneousOptions: SymbolDisplayMiscellaneousOptions.UseSpecialTypes
    );

    // What a member takes and gives, by its name alone: its namespace makes no line clearer.
    private static readonly SymbolDisplayFormat Short = new(
        genericsOptions: SymbolDisplayGenericsOptions.IncludeTypeParameters,
        parameterOptions: SymbolDisplayParameterOptions.IncludeType
            | SymbolDisplayParameterOptions.IncludeName
            | SymbolDisplayParameterOptions.IncludeParamsRefOut
            | SymbolDisplayParameterOptions.IncludeDefaultValue,
        miscellaneousOptions: SymbolDisplayMiscellaneousOptions.UseSpecialTypes
            | SymbolDisplayMiscellaneousOptions.IncludeNullableReferenceTypeModifier
    );

    public static string[] Lines(System.Reflection.Assembly project)
    {
        string loaded = (string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!;
        string[] others = loaded.Split(Path.PathSeparator);
        PortableExecutableReference own = MetadataReference.CreateFromFile(project.Location);
        var all = CSharpCompilation.Create(
            "surface",
            references: [own, .. others.Where(file => file != project.Location).Select(file => MetadataReference.CreateFromFile(file))]
        );
        var assembly = (IAssemblySymbol)all.GetAssemblyOrModuleSymbol(own)!;
        string root = assembly.Name == "ohmstead" ? "Ohmstead.App." : assembly.Name + ".";
        return
        [
            .. Types(assembly.GlobalNamespace)
                .SelectMany(Lines)
                .Select(line => line.Replace(root, "", StringComparison.Ordinal))
                .Order(StringComparer.Ordinal),
        ];
    }

    private static IEnumerable<INamedTypeSymbol> Types(INamespaceOrTypeSymbol container) =>
        container
            .GetMembers()
            .OfType<INamespaceOrTypeSymbol>()
            .Where(member => member is INamespaceSymbol || IsShown(member))
            .SelectMany(member => member is INamedTypeSymbol type ? Types(type).Prepend(type) : Types(member));

    private static IEnumerable<string> Lines(INamedTypeSymbol type)
    {
        yield return $"{type.ToDisplayString(Name)}{Taken(type.DelegateInvokeMethod)} : {Sort(type)}{Above(type)}";
        foreach (ISymbol member in type.TypeKind is TypeKind.Delegate ? [] : type.GetMembers().Where(m => IsShown(m) && !IsWritten(m)))
        {
            ITypeSymbol? given = member switch
            {
                IMethodSymbol { MethodKind: not MethodKind.Constructor } method => method.ReturnType,
                IPropertySymbol property => property.Type,
                IFieldSymbol field when type.TypeKind is not TypeKind.Enum => field.Type,
                _ => null,
            };
            string line = member.ToDisplayString(Name) + Taken(member as IMethodSymbol);
            yield return given is null ? line : $"{line} : {given.ToDisplayString(Short)}";
        }
    }

    private static string Taken(IMethodSymbol? method) =>
        method is null ? "" : $"({string.Join(", ", method.Parameters.Select(parameter => parameter.ToDisplayString(Short)))})";

    private static string Sort(INamedTypeSymbol type)
    {
        string how = type switch
        {
            { TypeKind: TypeKind.Class, IsStatic: true } => "static ",
            { TypeKind: TypeKind.Class, IsAbstract: true } => "abstract ",
            { TypeKind: TypeKind.Class, IsSealed: true } => "sealed ",
            _ => "",
        };
        return how + (type.IsRecord ? "record " : "") + type.TypeKind.ToString().ToLowerInvariant();
    }

    private static string Above(INamedTypeSymbol type) =>
        type is { TypeKind: TypeKind.Class, BaseType: { SpecialType: not SpecialType.System_Object } above }
            ? $" of {above.ToDisplayString(Short)}"
            : "";

    // What a derived class may see is shown, too; what it merely overrides is known already.
    private static bool IsShown(ISymbol symbol) =>
        symbol.DeclaredAccessibility is Accessibility.Public
        || (
            symbol is { DeclaredAccessibility: Accessibility.Protected or Accessibility.ProtectedOrInternal, IsOverride: false }
            && symbol.ContainingType is { IsSealed: false }
        );

    // By the compiler (a record's equality and copy), or for a property or an event that has its own line.
    private static bool IsWritten(ISymbol member) =>
        member is INamedTypeSymbol or IMethodSymbol { AssociatedSymbol: not null }
        || member.IsOverride
        || (member is not IPropertySymbol && member.GetAttributes().Any(a => a.AttributeClass?.Name == "CompilerGeneratedAttribute"))
        || (member is IMethodSymbol { MethodKind: MethodKind.Constructor } made && IsCopy(made));

    private static bool IsCopy(IMethodSymbol made) =>
        made.ContainingType.IsRecord
        && made.Parameters is [var only]
        && SymbolEqualityComparer.Default.Equals(only.Type, made.ContainingType);
}
