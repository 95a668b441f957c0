using Microsoft.AspNetCore.Components;
using Ohmstead.App.Queue;
using Ohmstead.App.Web;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Repair;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Components;

/// <summary>
/// A screen of one unit: reads it, reads it again when another window or a phone entered something, and tells what that was.
/// A unit that is not there ends in the page that says so.
/// </summary>
public abstract class UnitScreen : BenchComponent, IDisposable
{
    private readonly CancellationTokenSource closed = new();

    // Whose screen it is: word of what others entered comes on their way through the program, and would pass for them.
    private readonly string from = Asker.NowMark;
    private Guid? shownId;

    /// <summary>What is kept, and what the screens do with it.</summary>
    [Inject]
    protected Bench Bench { get; set; } = null!;

    /// <summary>The way to another screen.</summary>
    [Inject]
    protected NavigationManager Navigation { get; set; } = null!;

    /// <summary>The unit, from the address.</summary>
    [Parameter]
    public Guid Id { get; set; }

    /// <summary>The unit as last read; null until then.</summary>
    protected BenchUnit? Unit { get; private set; }

    /// <summary>Its type sheet, or the one that stands in while its type is not known; null when its sheet has problems.</summary>
    protected TypeSheet? Sheet { get; private set; }

    /// <summary>Entries of others that came in while this screen was open and have not been acknowledged.</summary>
    protected IReadOnlyList<Entry> FromOthers { get; private set; } = [];

    /// <summary>The entries made in this window.</summary>
    protected IReadOnlyList<Entry> EnteredHere => Unit is null ? [] : [.. Unit.Journal.Where(e => IsOwn(e.Id))];

    /// <summary>When the last entry made here was on the disk; null for none.</summary>
    protected DateTimeOffset? SavedAt { get; private set; }

    /// <summary>Called after every reading of the unit, before the screen is drawn.</summary>
    protected virtual Task UnitReadAsync() => Task.CompletedTask;

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        Bench.UnitChanged += OnUnitChanged;
        Bench.DoubtsChanged += OnUnitChanged;
    }

    /// <inheritdoc/>
    protected override async Task OnParametersSetAsync()
    {
        if (shownId == Id)
            return;
        if (shownId is { } before)
            Bench.LookedAt.End(before);
        Bench.LookedAt.Begin(Id);
        (shownId, FromOthers, SavedAt) = (Id, [], null);
        await ReadAsync();
        if (Unit is null)
            Navigation.NotFound();
    }

    /// <summary>Enters facts and reads the unit again. When this returns they are on the disk.</summary>
    protected async Task EnterAsync(params Fact[] facts)
    {
        if (Unit is null || facts.Length == 0)
            return;
        isEntering = true;
        try
        {
            var appended = await Bench.EnterAsync(Id, Unit.LastNumber, Who, await WithUnmovedAsync(facts));
            own.UnionWith(appended.Written.Select(e => e.Id));
            SavedAt = appended.Written[^1].At;
            Mishaps?.Clear();
        }
        finally
        {
            isEntering = false;
        }
        await ReadAsync();
    }

    /// <summary>A repair names the readings that it cannot have moved, worked out beside the screen.</summary>
    private async Task<Fact[]> WithUnmovedAsync(Fact[] facts)
    {
        if (Sheet is not { } sheet || Unit is not { } unit || !facts.OfType<PartChanged>().Any())
            return facts;
        var shop = await Bench.ShopAsync();
        return await Bench.Work.RunAsync("A repair", () => UnmovedReadings.In(facts, unit, sheet, shop));
    }

    /// <summary>Works something out beside the screen; when the screen is closed before, it is left.</summary>
    protected Task<T> WorkOutAsync<T>(Func<T> work) => Bench.Work.RunAsync($"A screen of {Unit?.Card.Tag}", work, closed.Token);

    /// <summary>Begins what a person waits for here, and may stop.</summary>
    protected Work<T> BeginWork<T>(string title, Func<Work, T> work) => Bench.Work.Begin(title, work, closed.Token);

    /// <summary>Ends when the screen is closed.</summary>
    protected CancellationToken Closed => closed.Token;

    /// <summary>Who enters here, as the journal names it.</summary>
    protected virtual string Who => "bench";

    /// <summary>The word of what others entered has been read.</summary>
    protected void Acknowledge() => FromOthers = [];

    /// <summary>Ids of entries that scripts of this very window make (photos) end in this; new ids differ in their ends.</summary>
    protected string WindowKey => windowKey ??= Bench.NewId().ToString("N")[^12..];

    private string? windowKey;

    private bool IsOwn(Guid entryId) => own.Contains(entryId) || entryId.ToString("N").EndsWith(WindowKey, StringComparison.Ordinal);

    private readonly HashSet<Guid> own = [];
    private bool isEntering;

    private async Task ReadAsync()
    {
        var before = Unit?.LastNumber;
        var unit = await Bench.ReadAsync(Id);
        if (unit is null)
            return;
        if (Bench.SavedAllTheSame(unit, Who, from) is [_, ..] kept)
        {
            own.UnionWith(kept);
            if (Mishaps?.Now is { IsUnsure: true })
                Mishaps.SaySaved(() => Bench.ToldSaved(unit.Id, Who, from));
        }
        if (before is { } seen && unit.LastNumber > seen)
            FromOthers = [.. FromOthers, .. unit.Journal.Where(e => e.Number > seen && !IsOwn(e.Id))];
        Unit = unit;
        Sheet = await Bench.SheetOfAsync(unit);
        await UnitReadAsync();
    }

    private void OnUnitChanged(Guid unitId)
    {
        if ((unitId != Id && unitId != Guid.Empty) || isEntering)
            return;
        _ = InvokeAsync(async () =>
        {
            if (closed.IsCancellationRequested || isEntering)
                return;
            await ReadAsync();
            StateHasChanged();
        });
    }

    /// <inheritdoc/>
    public virtual void Dispose()
    {
        closed.Cancel();
        if (shownId is { } shown)
            Bench.LookedAt.End(shown);
        shownId = null;
        Bench.UnitChanged -= OnUnitChanged;
        Bench.DoubtsChanged -= OnUnitChanged;
        GC.SuppressFinalize(this);
    }
}
