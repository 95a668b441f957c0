using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Draws the readings of a sheet: gates first, then every quantity in many states.</summary>
internal sealed class ReadingMaker(Dice dice, SheetDraft draft)
{
    private readonly List<string> gates = [];

    public void Make(int cores)
    {
        Gates();
        string[] low = ["blades", "blades-posts"];
        Alternating("low-amps", "ac-amps", null, Mains(12), low);
        if (dice.Chance(0.5))
            Alternating("low-watts-behind-ohms", "watts", null, With(Mains(24), "seriesOhms", dice.Tidy(5, 60, 2)), low);
        Lamp(low);
        Alternating("amps-idle", "ac-amps", null, Mains(draft.Volts), gates);
        Alternating("watts-idle", "watts", null, Mains(draft.Volts), gates);
        foreach (Output output in draft.Outputs)
            Of(output, low);
        Across(low);
        Drops();
        if (cores > 1)
            Add("blades-hot", "ohms", ["blade-1", "blade-2"], new JsonObject { ["celsius"] = 75.0 });
    }

    private void Gates()
    {
        string[] posts = [.. draft.Outputs.SelectMany(output => new[] { output.Post, output.Common }).Distinct()];
        Gate("blades", "ohms", ["blade-1", "blade-2"], [], new JsonObject { ["min"] = 0.1, ["max"] = 4000.0 });
        JsonArray blades = SheetDraft.Names("blade-1", "blade-2");
        Gate(
            "blades-posts",
            "ohms",
            ["blade-1", posts[0]],
            new JsonObject { ["joined"] = new JsonArray(blades, SheetDraft.Names(posts)) },
            new JsonObject { ["min"] = 1e7 }
        );
        Gate(
            "insulation-core",
            "insulation-ohms",
            ["blade-1", "iron"],
            new JsonObject { ["joined"] = new JsonArray(blades.DeepClone()) },
            new JsonObject { ["min"] = 2e6 }
        );
        Add(
            "insulation-posts-core",
            "insulation-ohms",
            [posts[0], "iron"],
            new JsonObject { ["joined"] = new JsonArray(SheetDraft.Names(posts)) }
        );
    }

    private void Lamp(string[] needs)
    {
        JsonObject source = With(
            Mains(draft.Volts),
            "seriesLamp",
            new JsonObject { ["volts"] = draft.Volts, ["amps"] = dice.Tidy(0.15, 0.6, 2) }
        );
        JsonObject reading = Alternating("series-lamp", "ac-volts", ("blade-1", "blade-2"), source, [.. needs, "insulation-core"]);
        reading["limits"] = new JsonObject { ["min"] = Dice.Tidy(0.4 * draft.Volts, 2) };
        gates.Add("series-lamp");
    }

    private void Of(Output output, string[] low)
    {
        string name = output.Post["post-".Length..];
        (string, string) ends = dice.Chance(0.5) ? (output.Post, output.Common) : (output.Common, output.Post);
        JsonObject ohmsState = State(output, null, null);
        if (dice.Chance(0.3))
            ohmsState["celsius"] = Math.Round(dice.Between(-5, 70));
        Add("ohms-" + name, "ohms", [ends.Item1, ends.Item2], ohmsState);
        string quantity = output.Direct ? "dc-volts" : "ac-volts";
        Alternating("low-" + name, quantity, ends, Mains(12), low, State(output, null, Load(output, 100)));
        if (!output.Direct)
            Alternating("volts-" + name, quantity, ends, Mains(draft.Volts), gates, State(output, null, null));
        JsonObject load = Load(output, output.LoadOhms);
        if (dice.Chance(0.3))
            load["henries"] = Dice.Tidy(output.LoadOhms * dice.LogBetween(0.1, 1.5) / draft.Omega);
        Alternating("load-" + name, quantity, ends, Mains(draft.Volts), gates, State(output, dice.Between(0.1, 1), load));
        if (output.Direct)
        {
            Alternating("ripple-" + name, "ac-volts", ends, Mains(draft.Volts), gates, State(output, null, Load(output, output.LoadOhms)));
            if (dice.Chance(0.5))
                Alternating("amps-" + name, "ac-amps", null, Mains(draft.Volts), gates, State(output, null, Load(output, output.LoadOhms)));
        }
        else if (dice.Chance(0.3))
        {
            Alternating("watts-" + name, "watts", null, Mains(draft.Volts), gates, State(output, null, Load(output, output.LoadOhms)));
        }
        if (output.Liftable is { } wire && dice.Chance(0.3))
        {
            JsonObject state = State(output, null, null);
            state["lifted"] = SheetDraft.Names(wire);
            Alternating("lifted-" + name, "ac-volts", ends, Mains(12), low, state);
        }
        if (dice.Chance(0.25))
        {
            JsonObject state = State(output, null, null);
            state["joined"] = new JsonArray(SheetDraft.Names(output.Post, output.Common));
            Alternating("shorted-" + name, "ac-amps", null, With(Mains(12), "seriesOhms", dice.Tidy(2, 20, 2)), low, state);
        }
        if (output.Selector is { } selector && dice.Chance(0.5))
        {
            JsonObject state = State(output, null, Load(output, output.LoadOhms));
            state["controls"]!.AsObject()[selector.Control] = selector.Off;
            Alternating("off-" + name, quantity, ends, Mains(draft.Volts), gates, state);
        }
    }

    /// <summary>From one output to another: an isolated secondary floats.</summary>
    private void Across(string[] low)
    {
        if (draft.Outputs.Count < 2)
            return;
        (Output one, Output other) = (draft.Outputs[0], draft.Outputs[^1]);
        if (one.Post == other.Post)
            return;
        Alternating("across-low", "ac-volts", (one.Post, other.Post), Mains(12), low);
        Alternating("across-mains", "ac-volts", ("blade-2", other.Post), Mains(draft.Volts), gates);
        Add("across-ohms", "ohms", [one.Post, other.Post], []);
        Add("across-insulation", "insulation-ohms", [one.Common, other.Common == one.Common ? "blade-1" : other.Common], []);
    }

    private void Drops()
    {
        Output output = dice.Pick(draft.Outputs);
        JsonObject state = State(output, null, null);
        state["source"] = new JsonObject
        {
            ["from"] = output.Post,
            ["to"] = output.Common,
            ["directAmps"] = dice.Chance(0.7) ? 1.0 : 0.2,
        };
        JsonObject[] inside =
        [
            .. draft.Elements.Select(e => e!.AsObject()).Where(e => e.Word("kind") is "breaker" or "switch" or "joint" or "rectifier"),
        ];
        foreach (JsonObject element in Enumerable.Range(0, 2).Select(_ => dice.Pick(inside)).Distinct())
            Add("drop-" + element.Word("id"), "dc-volts", [element.Word("from"), element.Word("to")], state.Copy(), "cover");
        Add("drop-all", "dc-volts", [output.Post, output.Common], state.Copy(), "cover");
        foreach (JsonObject disc in inside.Where(e => e.Word("kind") == "rectifier"))
        {
            bool backwards = dice.Chance(0.3);
            (string a, string b) = backwards ? (disc.Word("to"), disc.Word("from")) : (disc.Word("from"), disc.Word("to"));
            JsonObject source = new()
            {
                ["from"] = a,
                ["to"] = b,
                ["directAmps"] = dice.Tidy(0.1, 2, 2),
            };
            Add("one-" + disc.Word("id"), "dc-volts", [a, b], new JsonObject { ["source"] = source }, "cover");
            Add("meter-" + disc.Word("id"), "ohms", [a, b], [], "cover");
        }
    }

    private JsonObject State(Output output, double? throttle, JsonObject? load)
    {
        JsonObject controls = [];
        if (output.Throttle is { } control)
            controls[control] = throttle is { } x ? Math.Round(x, 2) : 1.0;
        if (output.Selector is { } selector)
            controls[selector.Control] = selector.On;
        JsonObject state = new() { ["controls"] = controls };
        if (load is not null)
            state["loads"] = new JsonArray(load);
        return state;
    }

    private JsonObject Load(Output output, double ohms) =>
        new()
        {
            ["from"] = output.Post,
            ["to"] = output.Common,
            ["ohms"] = Dice.Tidy(ohms, 2),
        };

    private static JsonObject Mains(double volts) =>
        new()
        {
            ["from"] = "blade-1",
            ["to"] = "blade-2",
            ["volts"] = volts,
        };

    private static JsonObject With(JsonObject source, string name, JsonNode value)
    {
        source[name] = value;
        return source;
    }

    private JsonObject Alternating(
        string id,
        string quantity,
        (string, string)? ends,
        JsonObject source,
        IEnumerable<string> needs,
        JsonObject? state = null
    )
    {
        JsonObject full = state ?? [];
        full["source"] = source;
        JsonObject reading = Add(id, quantity, ends is { } e ? [e.Item1, e.Item2] : [], full);
        reading["needs"] = SheetDraft.Names(needs);
        return reading;
    }

    private void Gate(string id, string quantity, string[] between, JsonObject state, JsonObject limits)
    {
        JsonObject reading = Add(id, quantity, between, state);
        reading["limits"] = limits;
        reading["gate"] = true;
        gates.Add(id);
    }

    private JsonObject Add(string id, string quantity, string[] between, JsonObject state, string access = "closed")
    {
        JsonObject reading = new()
        {
            ["id"] = id,
            ["title"] = id,
            ["quantity"] = quantity,
        };
        if (between.Length > 0)
            reading["between"] = SheetDraft.Names(between);
        reading["state"] = state;
        reading["minutes"] = (double)dice.Whole(1, 3);
        reading["access"] = access;
        draft.Readings.Add(reading);
        return reading;
    }
}
