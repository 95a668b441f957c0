using System.Runtime.CompilerServices;
using Bunit;
using Microsoft.AspNetCore.Components;

namespace Ohmstead.App.Tests.Screens;

/// <summary>What a person does on a screen whose background goes on changing it.</summary>
internal static class Doing
{
    /// <summary>A loaded machine may take long to show what a quiet one shows at once.</summary>
    [ModuleInitializer]
    internal static void BePatient() => BunitContext.DefaultWaitTimeout = TimeSpan.FromSeconds(60);

    /// <summary>Finds and acts in one go, with nothing drawn anew in between.</summary>
    public static void Do<T>(this IRenderedComponent<T> screen, Action action)
        where T : IComponent => screen.InvokeAsync(action).GetAwaiter().GetResult();
}
