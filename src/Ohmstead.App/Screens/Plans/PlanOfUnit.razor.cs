using Microsoft.AspNetCore.Components;
using Ohmstead.App.Background;
using Ohmstead.App.Screens.Readings;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Screens.Plans;

/// <summary>What is to be done on a unit, in which order, how long it takes and what it comes to.</summary>
public sealed partial class PlanOfUnit
{
    private UnitPlan? plan;
    private PlanPrice? price;
    private Diagnosed? madeOf;
    private int madeAt = -1;
    private string said = "";

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
        var made = await WorkOutAsync(() => UnitPlan.Of(unit, type, model.Sheet, latest?.View, shop, book));
        if (madeAt != unit.LastNumber || !ReferenceEquals(madeOf, latest))
            return;
        plan = made;
        StateHasChanged();
        var sum = await WorkOutAsync(() => PlanPrice.Of(made, shop, PlanPrice.Named(unit)));
        if (ReferenceEquals(plan, made))
            price = sum;
    }

    private async Task BeginAsync(PlanLine line)
    {
        if (line.Kind == PlanLineKind.TakeApart)
            await EnterAsync(new WayChosen(plan!.Reach));
        Navigation.NavigateTo(PlanLinks.Of(Id, line));
    }
}
