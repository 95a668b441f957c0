using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;

namespace Ohmstead.App.Components;

/// <summary>The hand is put on a box or button, where that is still on the page.</summary>
public static class ElementFocus
{
    /// <summary>What was drawn away before the browser got there keeps no hand, and breaks no page.</summary>
    public static async Task FocusIfThereAsync(this ElementReference element)
    {
        try
        {
            await element.FocusAsync();
        }
        catch (JSException)
        {
            // Gone meanwhile: a newer drawing of the page puts the hand where it wants it.
        }
    }
}
