using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>
/// What is stored in a winding that a direct current is driven through, and where it goes when that current is broken at the
/// winding. At small flux, on the nominal unit, the core not saturated: a real one stores less.
/// </summary>
/// <param name="Henries">Magnetising inductance seen by the current: the core's, referred by the turns squared [H].</param>
/// <param name="Joules">½·L·I² [J].</param>
/// <param name="BladeVoltsPerVolt">
/// Volts between the open blades of the plug for each volt that the break bears, by the turns; null where the sheet has no
/// reading on the mains, so that its blades are not known.
/// </param>
public sealed record InductiveKick(double Henries, double Joules, double? BladeVoltsPerVolt)
{
    /// <summary>Feeds the core with so little that no junction conducts [V].</summary>
    private const double ProbeVolts = 0.01;

    /// <summary>Less than this is felt by nobody and harms nothing; leakage through open contacts stays below it [J].</summary>
    private const double LeastJoules = 1e-6;

    /// <summary>
    /// The kick of a reading; null where no direct current flows through a winding. The turns that the current goes through are
    /// found from the other side: by reciprocity it links the core as often as the core, excited by one volt a turn, puts volts
    /// on the terminals that are fed. So taps, sliders, switches and windings against each other count as they lie.
    /// </summary>
    /// <param name="state">The state as it really is.</param>
    public static InductiveKick? Of(UnitModel model, ReadingSpec spec, ReadingState state)
    {
        if (state.Source is not { IsDirect: true } source)
            return null;
        double? Read(Quantity quantity, string from, string to, ReadingState at, UnitValues values) =>
            new ReadingSolver()
                .Solve(new FaultedCircuits(model, spec with { Quantity = quantity, From = from, To = to }, at).Usual, values)
                .Value;
        var amps = Amps(source, (quantity, at) => Read(quantity, source.From, source.To, at, model.Nominal), state);
        var (blades, ideal) = (Blades(model.Sheet), Ideal(model));
        InductiveKick? worst = null;
        for (var core = 0; core < model.Sheet.Cores.Length; core++)
        {
            var bare = Bare(state, model.Sheet.Elements[model.ReferenceWindings[core]], blades);
            double? Linked(string from, string to) => Read(Quantity.AcVolts, from, to, bare, ideal) / ProbeVolts;
            if (Linked(source.From, source.To) is not { } linked)
                continue;
            var siemens = NonlinearParts.Magnetising(model.Sheet.Cores[core], 1, model.Sheet.OmegaRadPerSecond, 0).Siemens;
            var henries = linked * linked / (model.Sheet.OmegaRadPerSecond * siemens);
            var joules = henries * amps * amps / 2;
            if (joules >= LeastJoules && joules > (worst?.Joules ?? 0))
                worst = new(henries, joules, blades is { } b ? Linked(b.From, b.To) / linked : null);
        }
        return worst;
    }

    /// <summary>What really flows: less than asked for where the source's limit of volts is reached.</summary>
    private static double Amps(SourceSpec source, Func<Quantity, ReadingState, double?> read, ReadingState state) =>
        read(Quantity.DcVolts, state) >= SourceSpec.MostLowVolts * 0.999 && read(Quantity.Ohms, state with { Source = null }) is { } ohms
            ? Math.Min(source.DirectAmps, SourceSpec.MostLowVolts / ohms)
            : source.DirectAmps;

    /// <summary>The nominal unit with a core that takes no current: then nothing drops where nothing is connected.</summary>
    private static UnitValues Ideal(UnitModel model)
    {
        var ideal = model.Nominal.Copy();
        Array.Fill(ideal.LossOhms, 1e12);
        // The factor multiplies a table's amps, and a fixed inductance.
        for (var core = 0; core < ideal.Excitation.Length; core++)
            ideal.Excitation[core] = model.Sheet.Cores[core].MagnetisingHenries > 0 ? 1e9 : 1e-9;
        return ideal;
    }

    /// <summary>The blades of the plug: where the first reading on the mains is fed.</summary>
    private static SourceSpec? Blades(TypeSheet sheet) =>
        sheet.Readings.Select(r => r.State.Source).FirstOrDefault(s => s is { IsDirect: false, IsMains: true });

    /// <summary>
    /// The same state, the reference winding fed in place of what was, without loads, and without the strap across the plug that
    /// takes the kick up: it may come off.
    /// </summary>
    private static ReadingState Bare(ReadingState state, Element winding, SourceSpec? blades)
    {
        bool Shorts(IReadOnlyCollection<string> strap) =>
            (strap.Contains(winding.From) && strap.Contains(winding.To))
            || (blades is { } b && strap.Contains(b.From) && strap.Contains(b.To));
        return state with
        {
            Source = new SourceSpec(winding.From, winding.To, ProbeVolts, 0, 0, 0, 0),
            Loads = [],
            Joined = [.. state.Joined.Where(j => !Shorts(j))],
            Lifted = state.Lifted.Remove(winding.Id),
        };
    }
}
