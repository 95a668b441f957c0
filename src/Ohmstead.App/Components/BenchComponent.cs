using Microsoft.AspNetCore.Components;
using Ohmstead.App.Web;

namespace Ohmstead.App.Components;

/// <summary>
/// What every screen and part of one is: a press that breaks is told in the window (<see cref="Mishaps"/>) and the screen stays, with
/// all that is typed in it. A press that goes through several components breaks off in all of them, so that none takes it for done.
/// </summary>
public abstract class BenchComponent : ComponentBase, IHandleEvent
{
    /// <summary>What went wrong in this window; null where a component is looked at alone.</summary>
    [CascadingParameter]
    protected Mishaps? Mishaps { get; set; }

    async Task IHandleEvent.HandleEventAsync(EventCallbackWorkItem item, object? arg)
    {
        if (Mishaps is null || Press.Now is not null)
        {
            await AnswerAsync(item, arg);
            return;
        }
        var press = Press.Begin();
        try
        {
            await AnswerAsync(item, arg);
        }
        catch (Exception broken)
        {
            Mishaps.Say(broken, press.IsKept);
            StateHasChanged();
        }
    }

    /// <summary>As a component does of itself: drawn when the press was taken, and again when it was answered.</summary>
    private async Task AnswerAsync(EventCallbackWorkItem item, object? arg)
    {
        var answer = item.InvokeAsync(arg);
        StateHasChanged();
        if (answer.IsCompletedSuccessfully)
            return;
        try
        {
            await answer;
        }
        catch (OperationCanceledException) when (answer.IsCanceled)
        {
            return;
        }
        StateHasChanged();
    }
}
