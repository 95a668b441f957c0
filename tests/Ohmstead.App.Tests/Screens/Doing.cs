using System.Diagnostics;
using System.Runtime.CompilerServices;
using Bunit;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What a person does on a screen whose background goes on changing it: finds and acts in one go, once it is there.</summary>
internal static class Doing
{
    /// <summary>A loaded machine may take long to show what a quiet one shows at once.</summary>
    [ModuleInitializer]
    internal static void BePatient() => BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(60);

    /// <summary>One act; what follows from it may still be under way when this returns.</summary>
    public static void Do<T>(this IRenderedComponent<T> screen, Action act)
        where T : IComponent =>
        screen
            .DoAsync(() =>
            {
                act();
                return Task.CompletedTask;
            })
            .GetAwaiter()
            .GetResult();

    /// <summary>One act with all that the screen does upon it. What others work out beside it may still be under way.</summary>
    public static async Task DoAsync<T>(this IRenderedComponent<T> screen, Func<Task> act)
        where T : IComponent
    {
        using var patience = new CancellationTokenSource(BunitContext.DefaultWaitTimeout);
        while (true)
        {
            var drawn = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
            void Drawn(object? sender, EventArgs e) => drawn.TrySetResult();
            screen.OnAfterRender += Drawn;
            try
            {
                // In the screen's own turn nothing is drawn between what is found and what is done to it.
                await screen.InvokeAsync(act).ConfigureAwait(false);
                return;
            }
            catch (Exception missing) when (IsNotThereYet(missing))
            {
                await drawn.Task.WaitAsync(patience.Token).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
                if (patience.IsCancellationRequested)
                    throw;
            }
            finally
            {
                screen.OnAfterRender -= Drawn;
            }
        }
    }

    /// <summary>The test looked and found nothing. Where the program itself broke, that stands, and is not done twice.</summary>
    private static bool IsNotThereYet(Exception missing) =>
        !new StackTrace(missing).GetFrames().Any(f => f.GetMethod()?.DeclaringType?.Assembly == typeof(Bench).Assembly);
}
