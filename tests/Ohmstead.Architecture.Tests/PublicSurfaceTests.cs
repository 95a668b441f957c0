using System.Reflection;
using System.Runtime.CompilerServices;

namespace Ohmstead.Architecture.Tests;

/// <summary>What Electrical shows the world is synchronous and cannot be changed after it was made.</summary>
public class PublicSurfaceTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    /// <summary>The two rules below see what they forbid: a store is asynchronous, and a screen's parameters are set from outside.</summary>
    [Fact]
    public void Where_it_is_allowed_it_is_found()
    {
        Assert.NotEmpty(Asynchronous(Repository.Storage));
        Assert.NotEmpty(Settable(Repository.App));
    }

    [Fact]
    public void Nothing_public_in_Electrical_is_asynchronous() => Findings.None(Asynchronous(Repository.Electrical));

    [Fact]
    public void No_public_property_in_Electrical_can_be_set_after_construction() => Findings.None(Settable(Repository.Electrical));

    private static IEnumerable<string> Asynchronous(Assembly project) =>
        from type in project.GetExportedTypes()
        from member in type.GetMembers(Declared)
        where Signature(member).Any(IsAsynchronous)
        select $"{type.FullName}.{member.Name}";

    private static IEnumerable<string> Settable(Assembly project) =>
        from type in project.GetExportedTypes()
        from property in type.GetProperties(Declared)
        where property.SetMethod is { IsPublic: true } set && !IsInit(set)
        select $"{type.FullName}.{property.Name}";

    private static bool IsInit(MethodInfo set) => set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static IEnumerable<Type> Signature(MemberInfo member) =>
        member switch
        {
            MethodBase method => method
                .GetParameters()
                .Select(parameter => parameter.ParameterType)
                .Append((method as MethodInfo)?.ReturnType ?? typeof(void)),
            PropertyInfo property => [property.PropertyType],
            FieldInfo field => [field.FieldType],
            _ => [],
        };

    private static bool IsAsynchronous(Type type)
    {
        if (type.HasElementType)
        {
            return IsAsynchronous(type.GetElementType()!);
        }
        Type open = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        return typeof(Task).IsAssignableFrom(type)
            || open == typeof(ValueTask)
            || open == typeof(ValueTask<>)
            || open == typeof(IAsyncEnumerable<>)
            || type.GetGenericArguments().Any(IsAsynchronous);
    }
}
