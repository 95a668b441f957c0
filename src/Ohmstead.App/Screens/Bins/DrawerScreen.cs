using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Components;
using Ohmstead.App.Web;
using Ohmstead.Workshop.Drawers;

namespace Ohmstead.App.Screens.Bins;

/// <summary>A screen of the drawer: reads it, and reads it again when any window entered something there or on a unit.</summary>
public abstract class DrawerScreen : BenchComponent, IDisposable
{
    // Whose screen it is: word of what others entered comes on their way through the program, and would pass for them.
    private readonly string own = Asker.NowMark;
    private bool isGone;

    /// <summary>What is kept.</summary>
    [Inject]
    protected Bench Bench { get; set; } = null!;

    /// <summary>The way to another screen.</summary>
    [Inject]
    protected NavigationManager Navigation { get; set; } = null!;

    /// <summary>The drawer as last read; null until then.</summary>
    protected Drawer? Drawer { get; private set; }

    /// <summary>The shop's settings.</summary>
    protected Workshop.Shops.Shop Shop { get; private set; } = Workshop.Shops.Shop.Usual;

    /// <summary>What was wrong with what was typed last; empty for nothing.</summary>
    protected string Problem { get; set; } = "";

    /// <summary>Said of what was saved last.</summary>
    protected string Said { get; set; } = "";

    /// <summary>The time now.</summary>
    protected DateTimeOffset Now => Bench.Time.GetUtcNow();

    /// <summary>Called after every reading of the drawer, before the screen is drawn.</summary>
    protected virtual Task DrawerReadAsync() => Task.CompletedTask;

    /// <inheritdoc/>
    protected override async Task OnInitializedAsync()
    {
        Bench.Drawer.Changed += OnChanged;
        Bench.UnitChanged += OnUnitChanged;
        await ReadAsync();
    }

    /// <summary>Enters what was typed, or says what is wrong with it.</summary>
    /// <returns>True when it was entered.</returns>
    protected async Task<bool> EnterAsync(DrawerTyped typed, string said = "Saved.")
    {
        (Problem, Said) = (typed.Problem, "");
        if (typed.Problem.Length > 0 || typed.Facts.IsEmpty)
            return false;
        await EnterAsync(typed.Facts);
        Said = said;
        return true;
    }

    /// <summary>Enters facts as one entry; it is on the disk when this returns.</summary>
    protected async Task EnterAsync(params ImmutableArray<DrawerFact> facts)
    {
        await Bench.Drawer.EnterAsync(facts);
        Mishaps?.Clear();
        await ReadAsync();
    }

    /// <summary>A day as it is said: "Nov 3".</summary>
    protected string Day(DateTimeOffset at) =>
        TimeZoneInfo.ConvertTime(at, Bench.Time.LocalTimeZone).ToString("MMM d, yyyy", System.Globalization.CultureInfo.InvariantCulture);

    private async Task ReadAsync()
    {
        Shop = await Bench.ShopAsync();
        Drawer = await Bench.Drawer.ReadAsync();
        if (Mishaps?.Now is { IsUnsure: true } && Bench.Drawer.IsSavedAllTheSame(own))
            Mishaps.SaySaved(() => Bench.Drawer.ToldSaved(own));
        await DrawerReadAsync();
    }

    private void OnUnitChanged(Guid unit) => OnChanged();

    private void OnChanged() =>
        _ = InvokeAsync(async () =>
        {
            if (isGone)
                return;
            await ReadAsync();
            StateHasChanged();
        });

    /// <inheritdoc/>
    public void Dispose()
    {
        isGone = true;
        Bench.Drawer.Changed -= OnChanged;
        Bench.UnitChanged -= OnUnitChanged;
        GC.SuppressFinalize(this);
    }
}
