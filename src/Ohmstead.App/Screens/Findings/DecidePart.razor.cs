using Microsoft.AspNetCore.Components;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Drawers;
using Ohmstead.Workshop.Findings;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Plans;
using Ohmstead.Workshop.Shops;

namespace Ohmstead.App.Screens.Findings;

/// <summary>What to do about one part: leave, watch, clean, tighten or replace, and with what. The choice goes on the plan.</summary>
public sealed partial class DecidePart
{
    private static readonly DecidedAct[] Acts =
    [
        DecidedAct.Leave,
        DecidedAct.Watch,
        DecidedAct.Clean,
        DecidedAct.Tighten,
        DecidedAct.Replace,
    ];

    private PartOptions? options;
    private PartMeasure? measure;
    private FaultProbability? estimated;
    private DecidedAct act;
    private PartFit? fit;
    private string price = "";
    private string minutes = "";
    private string why = "";
    private string refused = "";
    private string shownOf = "";
    private bool isDisc;
    private Diagnosed? madeOf;
    private Drawer? drawer;

    /// <summary>Element, slider or part of the look-over.</summary>
    [Parameter]
    public string About { get; set; } = "";

    /// <summary>The fault that it is about.</summary>
    [SupplyParameterFromQuery(Name = "fault")]
    public string? Fault { get; set; }

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        await base.UnitReadAsync();
        Make();
        drawer = await Bench.Drawer.ReadAsync();
    }

    /// <inheritdoc/>
    protected override bool ShouldRender()
    {
        if (!ReferenceEquals(madeOf, Answer.Latest))
            Make();
        return true;
    }

    private void Make()
    {
        madeOf = Answer.Latest;
        if (Model is not { } model || Unit is null)
            return;
        options = PartOptions.Of(Unit, model.Sheet, madeOf?.View, Shop, About, Fault ?? "");
        estimated = madeOf is { } made ? WorkToDo.Suspected(made.Result, About) : null;
        if (options is null || shownOf == About)
            return;
        // What the person typed stays while findings come in.
        shownOf = About;
        isDisc = DiscChoice.Steps(model, About) is not null;
        measure = PartMeasure.For(model.Sheet, About, estimated is { Mode.Mode: "worn" } worn ? worn.Size : null);
        (act, why, minutes) = (
            options.Standing?.Act ?? DecidedAct.Open,
            options.Standing?.Why ?? "",
            options.Standing?.Minutes is { } set ? ShopEdit.Show(set) : ""
        );
        Fit(options.Fits.FirstOrDefault(f => f.Name == options.Standing?.Part) ?? options.Fits[0]);
        if (options.Standing is { Act: DecidedAct.Replace } decided)
            price = ShopEdit.Show((double)decided.Price);
    }

    private void Fit(PartFit chosen)
    {
        fit = chosen;
        price = ShopEdit.Show((double)chosen.Price);
    }

    private void Measured(PartMeasure typed) => measure = typed;

    /// <summary>What was measured speaks for an act: taken into the choice, where it can still be changed.</summary>
    private void Take(MeasureVerdict verdict)
    {
        if (verdict.Act != DecidedAct.Open)
            act = verdict.Act;
        why = verdict.Why;
        if (measure is LampMeasure { Figures: { IsEmpty: false } figures } lamp && fit is { } same)
            fit = same with { Name = lamp.Marked, Figures = figures };
    }

    private async Task DecideAsync()
    {
        (var fact, refused) = options!.Choose(act, fit, price, minutes, why);
        if (fact is not null)
            await EnterAsync(fact);
    }

    private Task ChangeAsync(PartChanged change) => EnterAsync(change);

    private static string Words(DecidedAct act) =>
        act switch
        {
            DecidedAct.Leave => "Leave",
            DecidedAct.Watch => "Watch",
            DecidedAct.Clean => "Clean",
            DecidedAct.Tighten => "Tighten or resolder",
            DecidedAct.Replace => "Replace",
            _ => "Not decided",
        };
}
