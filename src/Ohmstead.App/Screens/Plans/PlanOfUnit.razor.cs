using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;
using Ohmstead.Electrical.Reckoning.Deciding;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Plans;

/// <summary>What is to be done on a unit, in which order, how long it takes and what it comes to.</summary>
public sealed partial class PlanOfUnit
{
    private UnitPlan? plan;
    private PlanPrice? price;
    private Diagnosed? madeOf;
    private int madeAt = -1;
    private WhileOpen? open;
    private WhatItTook? took;
    private string question = "";

    /// <summary>What the shop's own units took.</summary>
    [Inject]
    private ShopMinutes Minutes { get; set; } = null!;

    private string Heading =>
        plan is null || plan.Lines.IsEmpty
            ? "Plan"
            : $"Plan: about {ValueText.Plain(Math.Round(plan.Minutes))} min, {Counted.Of(plan.Lines.Length, "step")} left";

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        await MakeAsync();
    }

    /// <inheritdoc/>
    protected override bool ShouldRender()
    {
        // Findings came in behind the screen: the plan follows them.
        if (plan is not null && !ReferenceEquals(madeOf, Answer.Latest))
            _ = InvokeAsync(async () =>
            {
                await MakeAsync();
                StateHasChanged();
            });
        return true;
    }

    /// <summary>Lines first, then the price: its draws take longer.</summary>
    private async Task MakeAsync()
    {
        if (Model is not { } model || Sheet is not { } type || Unit is not { } unit)
            return;
        (madeOf, madeAt) = (Answer.Latest, unit.LastNumber);
        var (latest, shop) = (Answer.Latest, Shop);
        var book = await Minutes.ReadAsync(Id);
        var (made, worth) = await WorkOutAsync(() =>
        {
            var lines = UnitPlan.Of(unit, type, model.Sheet, latest?.View, shop, book);
            return (lines, WhileOpen.Of(unit, lines, type, model.Sheet, shop, book));
        });
        if (madeAt != unit.LastNumber || !ReferenceEquals(madeOf, latest))
            return;
        (plan, open, took) = (made, worth, WhatItTook.Of(unit, made, shop));
        StateHasChanged();
        var sum = await WorkOutAsync(() => PlanPrice.Of(made, shop, PlanPrice.Named(unit)));
        if (ReferenceEquals(plan, made))
            (price, question) = (sum, sum.Question is { } asked ? QuoteText.Of(asked) : "");
    }

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

    private async Task BeginAsync(PlanLine line)
    {
        if (line.Kind == PlanLineKind.TakeApart)
            await EnterAsync(new WayChosen(plan!.Reach));
        Navigation.NavigateTo(PlanLinks.Of(Id, line));
    }
}
