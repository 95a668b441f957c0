using System.Reflection;
using Ohmstead.Workshop.Keeping;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A store that goes wrong when a test says so, at the next call of a method, and once.</summary>
public class FailingStore : DispatchProxy
{
    private IStore inner = null!;
    private (string Method, Exception Failure, int After)? next;

    /// <summary>As the system reports a full disk: errno 28, ENOSPC.</summary>
    public static IOException FullDisk => new("No space left on device", 28);

    public static IStore Around(IStore store)
    {
        var failing = Create<IStore, FailingStore>();
        ((FailingStore)(object)failing).inner = store;
        return failing;
    }

    /// <summary>Makes the next call of a method fail.</summary>
    /// <param name="after">So many calls of it go well before.</param>
    public static void Fail(IStore failing, string method, Exception failure, int after = 0) =>
        ((FailingStore)(object)failing).next = (method, failure, after);

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        if (next is not { } failing || failing.Method != targetMethod!.Name)
            return targetMethod!.Invoke(inner, args);
        next = failing.After > 0 ? failing with { After = failing.After - 1 } : null;
        if (next is not null)
            return targetMethod.Invoke(inner, args);
        throw failing.Failure;
    }
}
