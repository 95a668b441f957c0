using Microsoft.AspNetCore.Components;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Readings;

namespace Ohmstead.App.Screens.Proving;

/// <summary>The check of a rewire before mains goes on: the supply, the readings, what they say, and the gate.</summary>
public sealed partial class CheckBeforeMains
{
    [Inject]
    private ILogger<CheckBeforeMains> Log { get; set; } = null!;

    private TypeSheet? own;
    private RewireResult? result;
    private string resultOf = "";
    private string trouble = "", refused = "", eyeRefused = "";
    private string part = "", ac = "", dc = "", by = "", looked = "", answers = "";
    private SupplyStated? stated;
    private RewireChecked? standing;

    private bool IsAsked => RewireGate.LastWiring(Unit!, Sheet!) > 0;

    private RewireReading? Next =>
        result!.Take.FirstOrDefault(t => !IsTaken(t) && (stated is not null || t.Spec.State.Source is null));

    private string VerdictWords =>
        result!.Verdict switch
        {
            RewireVerdict.Mistake => $"A mistake: {MistakeWords.Of(result.Probable.First(h => !h.Mistakes.IsEmpty).Mistakes, own!)}",
            RewireVerdict.NoneLeft => "No listed mistake is left",
            _ when result.WaitsForTheEye => "The readings leave no mistake that they can tell; some they cannot",
            _ => "Not proved yet",
        };

    /// <inheritdoc/>
    protected override async Task UnitReadAsync()
    {
        if (Sheet is null)
        {
            trouble = "The kind of this unit is not known yet. Name its kind first.";
            return;
        }
        var planned = OwnSheet.Of(Unit!, Sheet);
        if (!planned.IsSound)
        {
            trouble = $"The changes of this unit make no circuit: {planned.Problems[0].Wrong}.";
            return;
        }
        var shop = await Bench.ShopAsync();
        (own, trouble) = (planned.Value!, "");
        (stated, standing) = (RewireGate.Supply(Unit!, Sheet), RewireGate.Standing(Unit!, Sheet));
        if (part.Length == 0)
            part = own.Elements.First(e => e.Kind != "insulation").Id;
        var text = ReadingsText.Write(Unit!, new UnitModel(own), shop);
        var readings = Electrical.Readings.ReadingsFile.Read(text, own);
        if (!readings.IsSound)
        {
            trouble = $"The readings cannot be used: {readings.Problems[0].Wrong}.";
            return;
        }
        var key = OwnSheet.UnitText(Unit!, Sheet) + text + shop.Rewire;
        // What is drawn before the window is live is thrown away: nothing is weighed for it.
        if (key == resultOf || !RendererInfo.IsInteractive)
            return;
        (resultOf, result) = (key, null);
        _ = WeighAsync(key, own, readings.Value!, shop.Rewire);
    }

    private async Task WeighAsync(string key, TypeSheet planned, Electrical.Readings.UnitReadings readings, RewireChances chances)
    {
        RewireResult? weighed = null;
        try
        {
            weighed = await Task.Run(() => RewireCheck.Run(planned, readings, chances));
        }
#pragma warning disable CA1031 // The edge: a check that breaks says so, and the gate stays shut.
        catch (Exception e)
#pragma warning restore CA1031
        {
            Log.LogError(e, "The rewire of unit {Unit} could not be weighed", Id);
        }
        await InvokeAsync(() =>
        {
            if (key != resultOf)
                return;
            (result, trouble) = (
                weighed,
                weighed is null ? "The check could not be worked out; what is wrong stands in the window the tool was started from. The mains stay shut." : ""
            );
            StateHasChanged();
        });
    }

    private Shown? LastOf(RewireReading t) =>
        Unit!.CurrentReadings.LastOrDefault(r => r.Fact.ReadingId == t.Spec.Id).Fact?.Shown;

    private bool IsTaken(RewireReading t) => LastOf(t)?.Kind is ShownKind.Value or ShownKind.OverRange;

    private string ShownOf(RewireReading t) => LastOf(t) is { } shown ? ShownText.Write(shown, t.Spec.Quantity) : "";

    private Task RewireAsync() => EnterAsync(new PartChanged(part, PartChange.Rewired, null, "soldered anew"));

    private async Task StateAsync()
    {
        var taken = LowSupply.State(ac, dc, by);
        refused = taken.Refused;
        if (taken.Fact is SupplyStated fact)
            await EnterAsync(fact, new BenchSet(Unit!.Bench with { LowVolts = fact.AcVolts }));
    }

    private async Task LookedAsync()
    {
        eyeRefused = looked.Trim().Length == 0 || answers.Trim().Length == 0 ? "Say what was looked at, and who answers for it." : "";
        if (eyeRefused.Length == 0)
            await StandAsync(answers.Trim(), looked.Trim());
    }

    private Task StandAsync(string who, string seen) => EnterAsync(new RewireChecked(RewireGate.MarkOf(Unit!, Sheet!), who, seen));
}
