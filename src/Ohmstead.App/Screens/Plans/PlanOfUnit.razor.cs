using System.Collections.Immutable;
using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Queue;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Plans;

/// <summary>What is to be done on a unit, in which order, how long it takes and what it comes to.</summary>
public sealed partial class PlanOfUnit
{
    private UnitPlan? plan;
    private PlanPrice? price;
    private UnitPlan? priceOf;
    private Diagnosed? madeOf;
    private int madeAt = -1;
    private WhileOpen? open;
    private WhatItTook? took;
    private Drawer? drawer;
    private ImmutableArray<BinCount> toTakeOut = [];
    private Billed? billed;
    private string question = "";
    private Work? making,
        pricing;
    private bool isStopped,
        isPriceStopped;

    /// <summary>What the shop's own units took.</summary>
    [Inject]
    private ShopMinutes Minutes { get; set; } = null!;

    private string Heading =>
        plan is null || plan.Lines.IsEmpty ? "Plan"
        : price is null || !ReferenceEquals(priceOf, plan) ? $"Plan: {Counted.Of(plan.Lines.Length, "step")} left"
        : $"Plan: about {Counted.Minutes(price.LeftMinutes)}, {Counted.Of(plan.Lines.Length, "step")} left";

    /// <inheritdoc/>
    protected override void OnInitialized()
    {
        base.OnInitialized();
        Bench.Drawer.Changed += OnDrawer;
    }

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        billed = Unit?.All<Billed>().LastOrDefault().Fact;
        await MakeAsync();
    }

    /// <inheritdoc/>
    protected override bool ShouldRender()
    {
        // Findings came in behind the screen: the plan follows them.
        if (plan is not null && !ReferenceEquals(madeOf, Answer.Latest))
            MakeAgain();
        return true;
    }

    private void OnDrawer() => MakeAgain();

    private void MakeAgain() =>
        _ = InvokeAsync(async () =>
        {
            await MakeAsync();
            StateHasChanged();
        });

    /// <summary>Lines first: nobody waits for the price, whose draws take longer.</summary>
    private async Task MakeAsync()
    {
        if (Model is not { } model || Sheet is not { } type || Unit is not { } unit)
            return;
        (madeOf, madeAt) = (Answer.Latest, unit.LastNumber);
        var (latest, shop) = (Answer.Latest, Shop);
        var (book, parts, now) = (await Minutes.ReadAsync(Id), await Bench.Drawer.ReadAsync(), Bench.Time.GetUtcNow());
        var mine = BeginWork(
            "Plan",
            work =>
            {
                var lines = UnitPlan.Of(unit, type, model.Sheet, latest?.View, shop, book);
                work.Tell(0.5);
                return (PlanParts.With(lines, parts, Id, model.Sheet, shop, now), WhileOpen.Of(unit, lines, type, model.Sheet, shop, book));
            }
        );
        (making, isStopped) = (mine, false);
        if (plan is null)
            StateHasChanged();
        UnitPlan made;
        WhileOpen? worth;
        try
        {
            (made, worth) = await mine.Answer;
        }
        catch (OperationCanceledException) when (!Closed.IsCancellationRequested)
        {
            isStopped = true;
            return;
        }
        if (madeAt != unit.LastNumber || !ReferenceEquals(madeOf, latest))
            return;
        (plan, open, took, drawer) = (made, worth, WhatItTook.Of(unit, made, shop), parts);
        toTakeOut = unit.IsPractice ? [] : PlanParts.ToTakeOut(made);
        StateHasChanged();
        if (RendererInfo.IsInteractive)
            _ = PriceAsync(made, unit, shop);
    }

    private async Task PriceAsync(UnitPlan made, BenchUnit unit, Workshop.Shops.Shop shop)
    {
        var mine = BeginWork("Price", _ => PlanPrice.Of(made, shop, PlanPrice.Named(unit)));
        (pricing, isPriceStopped) = (mine, false);
        StateHasChanged();
        PlanPrice sum;
        try
        {
            sum = await mine.Answer;
        }
        catch (OperationCanceledException) when (!Closed.IsCancellationRequested)
        {
            isPriceStopped = true;
            StateHasChanged();
            return;
        }
        if (!ReferenceEquals(plan, made))
            return;
        (price, priceOf, question) = (sum, made, sum.Question is { } asked ? QuoteText.Of(asked) : "");
        StateHasChanged();
    }

    private Task PriceAgainAsync() => plan is { } made && Unit is { } unit ? PriceAsync(made, unit, Shop) : Task.CompletedTask;

    private DateOnly Today => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(Bench.Time.GetUtcNow(), Bench.Time.LocalTimeZone).DateTime);

    private Task KeepAsync(Fact fact) => EnterAsync(fact);

    /// <summary>The shop's chance that a part fails, changed where it stands.</summary>
    private async Task<string> FailsAsync(string part, string typed)
    {
        var (percent, problem) = ShopEdit.Number(typed, 0, 100);
        if (problem.Length > 0)
            return problem;
        await Bench.EditShopAsync(shop =>
            shop.Parts.ToList().FindIndex(p => p.Id == part) is >= 0 and var at
                ? shop.WithPart(at, p => p with { FailPercent = percent })
                : shop
        );
        await UnitReadAsync();
        StateHasChanged();
        return "";
    }

    /// <summary>What the plan needs and lies in the drawer is taken out for this unit; the repairs that fit it take it from beside the unit.</summary>
    private async Task TakeOutAsync()
    {
        // A second press, before the plan is made again, takes nothing.
        var parts = toTakeOut;
        toTakeOut = [];
        if (parts.IsEmpty)
            return;
        try
        {
            await Bench.Drawer.EnterAsync(new KitTaken(Id, Unit!.Card.Tag, parts));
        }
        catch
        {
            toTakeOut = parts;
            throw;
        }
    }

    /// <summary>The repair ends at a stop point: its fee is the bill, and the unit goes back.</summary>
    private async Task EndAsync(PlanStop stop)
    {
        await EnterAsync(EstimateDraft.Ended(stop));
        Navigation.NavigateTo($"/units/{Id}/return");
    }

    private async Task BeginAsync(PlanLine line)
    {
        if (line.Kind == PlanLineKind.TakeApart)
            await EnterAsync(new WayChosen(plan!.Reach));
        Navigation.NavigateTo(PlanLinks.Of(Id, line));
    }

    /// <inheritdoc/>
    public override void Dispose()
    {
        Bench.Drawer.Changed -= OnDrawer;
        base.Dispose();
        GC.SuppressFinalize(this);
    }
}
