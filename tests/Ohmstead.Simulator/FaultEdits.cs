using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>
/// Applies faults to a copy of a sheet. What has no field of its own becomes a private one, its name starting with
/// an underscore: _brokenAt, _shorted (turns of a winding), _stuck (a switch), _closedOhms, _seriesOhms and _leakOhms (a capacitor).
/// </summary>
internal static class FaultEdits
{
    private const double Open = 1e7;

    public static JsonObject Apply(JsonObject sheet, IEnumerable<Fault> faults)
    {
        JsonObject copy = sheet.Copy();
        foreach (Fault fault in faults)
        {
            if (fault.Mode == "swap")
                Swap(copy, fault.Element);
            else if (FindSlider(copy, fault.Element) is { } slider)
                slider["contactOhms"] = Slider(fault);
            else if (copy.Objects("sharedFaults").FirstOrDefault(f => f.Word("id") == fault.Element) is { } shared)
                foreach (string id in shared["elements"].Words())
                    Edit(copy.ById("elements", id), fault);
            else
                Edit(copy.ById("elements", fault.Element), fault);
        }
        return copy;
    }

    private static void Edit(JsonObject element, Fault fault)
    {
        string kind = element.Word("kind");
        switch (kind, fault.Mode)
        {
            case ("resistor", "open") when element.ContainsKey("sliders") || element.ContainsKey("taps"):
                element["_brokenAt"] = fault.Value ?? 0;
                break;
            case ("capacitor", "open"):
                element["_seriesOhms"] = Open;
                break;
            case ("capacitor", "leaky"):
                element["_leakOhms"] = Needed(fault);
                break;
            case ("capacitor", "shorted"):
                element["_leakOhms"] = 0.01;
                break;
            case ("wire" or "joint" or "breaker" or "resistor" or "lamp", "open"):
                element["kind"] = "resistor";
                element["ohms"] = Open;
                break;
            case ("wire" or "joint" or "breaker", "resistive"):
            case ("insulation", "low"):
                element["ohms"] = Needed(fault);
                break;
            case ("breaker", "bypassed"):
                element["ohms"] = 1e-3;
                break;
            case ("resistor", "shorted"):
                element["ohms"] = 0.01;
                break;
            case ("resistor", "drifted"):
                element["ohms"] = element.Number("ohms") * Needed(fault);
                break;
            case ("winding", "open"):
                element["_brokenAt"] = fault.Value ?? 0;
                break;
            case ("winding", "shorted-turns"):
                element["_shorted"] = Needed(fault);
                break;
            case ("winding" or "rectifier", "reversed"):
                (string from, string to) = (element.Word("from"), element.Word("to"));
                element["from"] = to;
                element["to"] = from;
                break;
            case ("rectifier", "high-drop"):
                element["seriesOhms"] = Needed(fault);
                break;
            case ("rectifier", "leaky"):
                element["leakageOhms"] = Needed(fault);
                break;
            case ("rectifier", "shorted"):
                element["leakageOhms"] = 0.02;
                break;
            case ("rectifier", "open"):
                element["seriesOhms"] = Open;
                element["leakageOhms"] = Open;
                break;
            case ("switch", "resistive"):
                element["ohms"] = Needed(fault);
                break;
            case ("switch", "stuck-open" or "stuck-closed"):
                element["_stuck"] = fault.Mode;
                break;
            default:
                throw new InvalidDataException($"a {kind} has no fault {fault.Mode}");
        }
    }

    private static double Slider(Fault fault) =>
        fault.Mode switch
        {
            "worn" => Needed(fault),
            "open" => Open,
            _ => throw new InvalidDataException($"a slider has no fault {fault.Mode}"),
        };

    private static void Swap(JsonObject sheet, string ends)
    {
        string[] pair = ends.Split('~');
        (JsonObject first, string firstEnd) = End(sheet, pair[0]);
        (JsonObject second, string secondEnd) = End(sheet, pair[1]);
        (string one, string other) = (first.Word(firstEnd), second.Word(secondEnd));
        first[firstEnd] = other;
        second[secondEnd] = one;
    }

    private static (JsonObject Element, string End) End(JsonObject sheet, string text)
    {
        int dot = text.LastIndexOf('.');
        return (sheet.ById("elements", text[..dot]), text[(dot + 1)..]);
    }

    private static JsonObject? FindSlider(JsonObject sheet, string id) =>
        sheet.Objects("elements").SelectMany(element => element.Objects("sliders")).FirstOrDefault(slider => slider.Word("id") == id);

    private static double Needed(Fault fault) => fault.Value ?? throw new InvalidDataException($"{fault} needs a value");
}
