using System.Reflection;
using Ohmstead.Workshop.Keeping;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A store that goes wrong when a test says so, at the next call of a method, and once.</summary>
public class FailingStore : DispatchProxy
{
    private IStore inner = null!;
    private (string Method, Exception Failure)? next;

    /// <summary>As the system reports a full disk: errno 28, ENOSPC.</summary>
    public static IOException FullDisk => new("No space left on device", 28);

    public static IStore Around(IStore store)
    {
        var failing = Create<IStore, FailingStore>();
        ((FailingStore)(object)failing).inner = store;
        return failing;
    }

    /// <summary>Makes the next call of a method fail.</summary>
    public static void Fail(IStore failing, string method, Exception failure) =>
        ((FailingStore)(object)failing).next = (method, failure);

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        if (next is not { } failing || failing.Method != targetMethod!.Name)
            return targetMethod!.Invoke(inner, args);
        next = null;
        throw failing.Failure;
    }
}
