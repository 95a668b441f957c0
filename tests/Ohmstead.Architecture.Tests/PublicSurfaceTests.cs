using System.Reflection;
using System.Runtime.CompilerServices;

namespace Ohmstead.Architecture.Tests;

/// <summary>What Electrical shows the world is synchronous and cannot be changed after it was made.</summary>
public class PublicSurfaceTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    [Fact]
    public void Nothing_public_in_Electrical_is_asynchronous()
    {
        IEnumerable<string> found =
            from type in Repository.Electrical.GetExportedTypes()
            from member in type.GetMembers(Declared)
            where Signature(member).Any(IsAsynchronous)
            select $"{type.FullName}.{member.Name}";
        Findings.None(found);
    }

    [Fact]
    public void No_public_property_in_Electrical_can_be_set_after_construction()
    {
        IEnumerable<string> found =
            from type in Repository.Electrical.GetExportedTypes()
            from property in type.GetProperties(Declared)
            where property.SetMethod is { IsPublic: true } set && !IsInit(set)
            select $"{type.FullName}.{property.Name}";
        Findings.None(found);
    }

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
