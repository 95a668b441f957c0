using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Carrying;

/// <summary>
/// What each part carries for hours: what its sheet says, or else an estimate by one rule (docs/methods/carrying.md; common
/// practice, no source). It loses a twentieth of its volts in its own resistance, and never carries more than the usable watts over
/// its volts. Its volts are, of a winding its own with no load, of a slider those of its winding, of a switch those of the posts.
/// </summary>
internal sealed class PartLimits
{
    /// <summary>The share of its volts that a part may lose. Common practice, no source.</summary>
    private const double LossShare = 0.05;

    private readonly Dictionary<string, PartLimit> byId = new(StringComparer.Ordinal);

    /// <param name="idle">The unit fed from the mains with no load.</param>
    /// <param name="postVolts">Between the posts with no load [V].</param>
    public PartLimits(UnitModel model, PartCurrents currents, ReadingState idle, double postVolts, double usableWatts)
    {
        var mains = MainsSide(model.Sheet, idle.Source!);
        foreach (var element in model.Sheet.Elements)
        {
            // The usable watts are those of the whole unit: the mains side was made for them.
            var canEstimate = !mains.Contains(element.From);
            switch (element)
            {
                case Resistive { Kind: ElementKind.Breaker, RatedAmps: > 0 } breaker:
                    byId[breaker.Id] = new(HeldBy.Breaker, breaker.RatedAmps, false);
                    break;
                case Switch contact:
                    Put(contact.Id, HeldBy.Switch, contact.MostAmps, contact.Ohms, postVolts);
                    break;
                case Winding winding:
                    // The idle unit was solved for its posts before. A resistor takes volts to take them: nothing is estimated by them.
                    var volts = winding.IsOnCore ? currents.VoltsBetween(winding.From, winding.To, Quantity.AcVolts, idle) ?? 0 : 0;
                    Put(winding.Id, HeldBy.Winding, winding.MostAmps, winding.Ohms, volts);
                    foreach (var slider in winding.Sliders)
                        Put(slider.Id, HeldBy.Slider, slider.MostAmps, slider.ContactOhms, volts);
                    break;
            }

            void Put(string id, HeldBy by, double said, double ohms, double volts)
            {
                if (said > 0)
                    byId[id] = new(by, said, false);
                else if (canEstimate && volts > 0)
                {
                    // Of a switch the volts are the posts': where the watts allow less than the loss, it is the core that holds.
                    var (byLoss, byWatts) = (LossShare * volts / Math.Max(ohms, 1e-9), usableWatts / volts);
                    byId[id] =
                        by == HeldBy.Switch && byWatts < byLoss
                            ? new(HeldBy.Core, byWatts, false)
                            : new(by, Math.Min(byLoss, byWatts), true);
                }
            }
        }
    }

    /// <summary>What a part carries; null for one that nothing is known of.</summary>
    public PartLimit? Of(string id) => byId.GetValueOrDefault(id);

    /// <summary>The terminals that metal joins to the plug.</summary>
    private static HashSet<string> MainsSide(TypeSheet sheet, SourceSpec source)
    {
        var side = new HashSet<string>([source.From, source.To], StringComparer.Ordinal);
        var before = 0;
        while (side.Count > before)
        {
            before = side.Count;
            foreach (var element in sheet.Elements.Where(e => e.Kind != ElementKind.Insulation))
            {
                string[] ends = [element.From, element.To, .. element.OtherTerminals];
                if (ends.Any(side.Contains))
                    side.UnionWith(ends);
            }
        }
        return side;
    }
}

/// <summary>What a part carries for hours [A].</summary>
internal sealed record PartLimit(HeldBy By, double Amps, bool IsEstimated);
