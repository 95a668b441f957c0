using System.Text.Json.Nodes;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>
/// A type of unit that fits an outline and whose numbers are its own: core and windings by design (<see cref="CoreAndWire"/>), whole and half
/// turns, volts a few percent off what the plate says, parts within what is sold. Its sheet says how far its units differ, and no more.
/// </summary>
internal sealed class DesignedType
{
    private readonly Outline outline;
    private readonly JsonObject sheet;
    private readonly CoreAndWire works;
    private readonly Random dice;
    private readonly Dictionary<(string Winding, double Drafted), double> turns = [];
    private readonly Dictionary<string, double> offOfWinding = new(StringComparer.Ordinal);
    private readonly double draftedTurnsPerVolt;

    private DesignedType(OutlineKind kind, int seed)
    {
        (outline, sheet, dice) = (kind.Outline, TypeSheetFile.JsonOf(kind.Sheet), new Random(seed));
        works = new CoreAndWire(outline.Volts, outline.Hertz, outline.Watts.Value, dice);
        draftedTurnsPerVolt = 1.005 * kind.Sheet.Windings.First(w => w.Id == "primary").Turns / outline.Volts;
    }

    /// <param name="kind">What can be seen of it.</param>
    /// <param name="seed">The same outline and seed give the same type.</param>
    public static TypeSheet Of(OutlineKind kind, int seed)
    {
        var type = new DesignedType(kind, seed);
        foreach (var element in type.sheet["elements"]!.AsArray())
            type.Design(element!.AsObject());
        type.DesignCore(type.sheet["cores"]![0]!.AsObject());
        UnitsOnly(type.sheet);
        return TypeSheetFile.Read(type.sheet.ToJsonString()).Required;
    }

    private void Design(JsonObject e)
    {
        switch ((string)e["kind"]!)
        {
            case "winding":
                Wind(e, (string)e["id"]!);
                break;
            case "wire" or "joint":
                Scale(e, "ohms", 0.45);
                break;
            case "insulation" or "breaker":
                Scale(e, "ohms", 0.4);
                break;
            case "resistor":
                Scale(e, "ohms", 0.2);
                break;
            case "rectifier":
                Scale(e, "saturationAmps", 0.8);
                Scale(e, "slopeVolts", 0.08);
                Scale(e, "seriesOhms", 0.5);
                Scale(e, "leakageOhms", 0.8);
                break;
            case "lamp" when e["spread"] is not null:
                e["amps"] = new[] { 0.1, 0.15, 0.2 }[dice.Next(3)];
                break;
        }
        foreach (var slider in (e["sliders"] as JsonArray ?? []).Select(s => s!.AsObject()))
            Scale(slider, "contactOhms", 0.5);
    }

    private void Wind(JsonObject e, string id)
    {
        if (id == "primary")
        {
            (e["turns"], e["ohms"], e["leakageHenries"]) = (works.PrimaryTurns, works.PrimaryOhms, works.LeakageOf(works.PrimaryTurns));
            return;
        }
        if (id.StartsWith("rheostat-", StringComparison.Ordinal))
        {
            Scale(e, "ohms", 0.12);
            return;
        }
        var whole = Turns(id, (double)e["turns"]!);
        foreach (var tap in (e["taps"] as JsonArray ?? []).Select(t => t!.AsObject()))
            tap["turn"] = Most(ref whole, Turns(id, (double)tap["turn"]!));
        foreach (var slider in (e["sliders"] as JsonArray ?? []).Select(s => s!.AsObject()))
        foreach (var end in (string[])["fromTurn", "toTurn"])
            slider[end] = Most(ref whole, Turns(id, (double)slider[end]!));
        (e["turns"], e["ohms"], e["leakageHenries"]) = (whole, Ohms(id, whole), works.LeakageOf(whole));
    }

    private static double Most(ref double most, double turn)
    {
        most = Math.Max(most, turn);
        return turn;
    }

    /// <summary>Of a winding and its taps the volts are off together, and each a little by itself; equal volts are one place.</summary>
    private double Turns(string winding, double drafted)
    {
        if (turns.TryGetValue((winding, drafted), out var known))
            return known;
        if (!offOfWinding.TryGetValue(winding, out var off))
            offOfWinding[winding] = off = works.Between(0.96, 1.04);
        var exact = drafted / draftedTurnsPerVolt * works.TurnsPerVolt * 1.005 * off * works.Between(0.97, 1.03);
        return turns[(winding, drafted)] = Math.Round(2 * exact) / 2;
    }

    /// <summary>A winding takes as much of the window as it must carry; a boost or range winding is of the throttle's wire or a thinner one.</summary>
    private double Ohms(string id, double whole)
    {
        if (outline.Windings.FirstOrDefault(w => w.Id == id) is not { } w)
        {
            var main = Element(outline.Throttles[0].On);
            return whole * (double)main["ohms"]! / (double)main["turns"]! * works.Between(1.1, 1.8);
        }
        var driving = outline.Throttles.Select(t => t.On).Distinct(StringComparer.Ordinal).Count();
        var share =
            w.Watts is { } watts ? watts.Value / outline.Watts.Value
            : outline.Throttles.Any(t => t.On == id) ? (driving == 1 ? 1 : 0.65)
            : 0.25;
        return works.OhmsOf(whole, share);
    }

    private JsonObject Element(string id) => sheet["elements"]!.AsArray().Select(e => e!.AsObject()).First(e => (string)e["id"]! == id);

    private void DesignCore(JsonObject core)
    {
        core["lossOhms"] = works.LossOhms;
        core["excitation"] = new JsonArray([.. works.Excitation.Select(p => new JsonArray(p.Volts, p.Amps))]);
    }

    private void Scale(JsonObject e, string field, double most) => e[field] = (double)e[field]! * works.Factor(most);

    /// <summary>Takes the doubt about the type out of every spread: what is left is how far units differ.</summary>
    private static void UnitsOnly(JsonNode? at)
    {
        if (at is JsonArray all)
            foreach (var one in all)
                UnitsOnly(one);
        if (at is not JsonObject o)
            return;
        if (o["spread"] is JsonObject spread && o["kindError"] is JsonObject doubt)
        {
            foreach (var (field, much) in doubt)
                spread[field] = Math.Sqrt(Math.Max(0, Math.Pow((double)spread[field]!, 2) - Math.Pow((double)much!, 2)));
            o.Remove("kindError");
        }
        foreach (var (_, below) in o.ToList())
            UnitsOnly(below);
    }
}
