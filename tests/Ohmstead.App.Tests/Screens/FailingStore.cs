using System.Reflection;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>
/// A store that goes wrong when a test says so: at the next call of a method and once, or at all of them until it is mended. Or it
/// answers late.
/// </summary>
public class FailingStore : DispatchProxy
{
    private IStore inner = null!;
    private (string Method, Exception Failure)? next;
    private (string Method, Exception Failure, string? Since)? all;
    private (string Method, Task Until)? held;

    /// <summary>As the system reports a full disk: errno 28, ENOSPC.</summary>
    public static IOException FullDisk => new("No space left on device", 28);

    public static IStore Around(IStore store)
    {
        var failing = Create<IStore, FailingStore>();
        ((FailingStore)(object)failing).inner = store;
        return failing;
    }

    /// <summary>Makes the next call of a method fail.</summary>
    public static void Fail(IStore failing, string method, Exception failure) => Of(failing).next = (method, failure);

    /// <summary>Makes every call of a method fail, whoever calls.</summary>
    /// <param name="since">Only after a call of this method has gone well.</param>
    public static void Break(IStore failing, string method, Exception failure, string? since = null) =>
        Of(failing).all = (method, failure, since);

    /// <summary>Calls of a method are answered once the test lets them be, as by a database that is far away.</summary>
    public static TaskCompletionSource Hold(IStore late, string method)
    {
        var letGo = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        Of(late).held = (method, letGo.Task);
        return letGo;
    }

    public static void Mend(IStore failing) => Of(failing).all = null;

    /// <summary>A bench puts who asks between its screens and its store.</summary>
    private static FailingStore Of(IStore store) => (FailingStore)(object)(store is AskedStore asked ? asked.Inner : store);

    protected override object? Invoke(MethodInfo? targetMethod, object?[]? args)
    {
        var name = targetMethod!.Name;
        if (all is { Since: null } broken && broken.Method == name)
            throw broken.Failure;
        if (next is { } failing && failing.Method == name)
        {
            next = null;
            throw failing.Failure;
        }
        var done = targetMethod.Invoke(inner, args);
        if (held is { } late && late.Method == name)
            return Late((dynamic)done!, late.Until);
        if (all is { } waiting && waiting.Since == name && done is Task task)
            return AfterwardsBroken((dynamic)task, waiting);
        return done;
    }

    private static async Task<T> Late<T>(Task<T> answer, Task until)
    {
        await until;
        return await answer;
    }

    private async Task<T> AfterwardsBroken<T>(Task<T> task, (string Method, Exception Failure, string? Since) waiting)
    {
        var done = await task;
        all = waiting with { Since = null };
        return done;
    }
}
