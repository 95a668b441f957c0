using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>
/// Draws a small controller with what drawn sheets of <see cref="SheetMaker"/> lack: a resistor with a slider and a tap, a slider with
/// an off end, capacitors from a suppressor to a filter, a stack whose plates age together.
/// </summary>
internal sealed class NewSortsMaker(int seed)
{
    private readonly Dice dice = new(seed);
    private readonly SheetDraft draft = new() { Volts = seed % 2 == 0 ? 120 : 230, Hertz = seed % 2 == 0 ? 60 : 50 };
    private readonly JsonArray shared = [];
    private string post = "";
    private string back = "common";
    private bool isDirect;

    public JsonObject Make(string id)
    {
        double watts = dice.Tidy(20, 120, 2);
        double rated = draft.Volts * draft.Volts / watts;
        Mains(rated, watts);
        double volts = dice.Between(9, 22);
        Throttle(volts, volts * volts / watts);
        if (dice.Chance(0.7))
            Rectifiers();
        Outlet(volts * volts / watts);
        Readings(volts * volts / watts);
        return new JsonObject
        {
            ["ohmstead"] = "type-sheet/1",
            ["id"] = id,
            ["title"] = $"Drawn controller {id}, {draft.Volts.Text()} V {draft.Hertz.Text()} Hz (invented)",
            ["supply"] = new JsonObject { ["volts"] = draft.Volts, ["hertz"] = draft.Hertz },
            ["rating"] = new JsonObject { ["inputWatts"] = watts, ["usableWatts"] = Dice.Tidy(0.7 * watts, 2) },
            ["cores"] = draft.Cores,
            ["controls"] = draft.Controls,
            ["elements"] = draft.Elements,
            ["sharedFaults"] = shared,
            ["near"] = draft.Near,
            ["readings"] = draft.Readings,
            ["observations"] = new JsonArray(),
            ["takeApart"] = new JsonArray(),
        };
    }

    private void Mains(double rated, double watts)
    {
        draft.Add("cord-1", "wire", "blade-1", "lug-1", ("ohms", dice.Tidy(0.02, 0.1)));
        draft.Add("cord-2", "wire", "blade-2", "lug-2", ("ohms", dice.Tidy(0.02, 0.1)));
        draft.Near.Add(SheetDraft.Names("lug-1", "lug-2"));
        if (dice.Chance(0.4))
            draft.Add("suppressor", "capacitor", "lug-1", "lug-2", ("farads", dice.Tidy(1e-8, 2e-7, 2)));
        draft.Add(
            "primary",
            "winding",
            "lug-1",
            "lug-2",
            ("core", "core"),
            ("turns", Math.Round(draft.Volts / dice.LogBetween(0.15, 0.4))),
            ("ohms", Dice.Tidy(rated * dice.LogBetween(0.02, 0.06))),
            ("leakageHenries", Dice.Tidy(rated * dice.LogBetween(0.005, 0.03) / draft.Omega))
        );
        double magnetising = watts / draft.Volts * dice.LogBetween(0.06, 0.25);
        JsonObject core = new()
        {
            ["id"] = "core",
            ["referenceWinding"] = "primary",
            ["lossOhms"] = Dice.Tidy(rated / dice.LogBetween(0.03, 0.09)),
        };
        core["excitation"] = new JsonArray(
            new JsonArray(0.0, 0.0),
            new JsonArray(Dice.Tidy(0.5 * draft.Volts), Dice.Tidy(0.3 * magnetising)),
            new JsonArray(draft.Volts, Dice.Tidy(magnetising)),
            new JsonArray(Dice.Tidy(1.1 * draft.Volts), Dice.Tidy(1.5 * magnetising))
        );
        draft.Cores.Add(core);
    }

    /// <summary>A winding of so many volts, and what makes fewer of them: a contact on its turns, or a rheostat behind it.</summary>
    private void Throttle(double volts, double rated)
    {
        double turns = Math.Round(1.04 * volts / draft.Volts * draft.Elements[^1]!.AsObject().Number("turns"));
        JsonObject main = draft.Add(
            "main",
            "winding",
            "common",
            "main-end",
            ("core", "core"),
            ("turns", turns),
            ("ohms", Dice.Tidy(rated * dice.LogBetween(0.02, 0.06))),
            ("leakageHenries", Dice.Tidy(rated * dice.LogBetween(0.005, 0.03) / draft.Omega))
        );
        draft.Controls.Add(new JsonObject { ["id"] = "throttle", ["kind"] = "throttle" });
        (post, JsonObject on, double length) = ("arm", main, turns);
        if (dice.Chance(0.75))
        {
            JsonObject wire = draft.Add("rheostat", "resistor", "main-end", "free", ("ohms", Dice.Tidy(rated * dice.LogBetween(1.5, 8))));
            length = 100;
            if (dice.Chance(0.5))
                wire["turns"] = length = (double)dice.Whole(50, 200);
            if (dice.Chance(0.4))
                wire["taps"] = new JsonArray(new JsonObject { ["turn"] = Math.Round(0.5 * length), ["to"] = "middle" });
            draft.Add("ins-rheostat", "insulation", "free", "iron", ("ohms", dice.Tidy(1e8, 6e8, 2)));
            on = wire;
        }
        bool isWire = on != main;
        JsonObject slider = new()
        {
            ["id"] = "brush",
            ["control"] = "throttle",
            ["fromTurn"] = isWire ? length : Math.Round(0.3 * length),
            ["toTurn"] = isWire ? 0.0 : length,
            ["to"] = "arm",
            ["contactOhms"] = dice.Tidy(0.05, 0.15),
            ["bridgesTurns"] = dice.Chance(0.3) ? 1 : 0,
        };
        if (dice.Chance(0.6))
            slider["offBelow"] = 0.05;
        if (dice.Chance(0.2))
            slider["offAbove"] = 0.9;
        on["sliders"] = new JsonArray(slider);
        draft.Add("ins-core", "insulation", "common", "iron", ("ohms", dice.Tidy(1e8, 6e8, 2)));
        draft.Add("ins-primary", "insulation", "lug-1", "iron", ("ohms", dice.Tidy(1e8, 6e8, 2)));
    }

    private void Rectifiers()
    {
        isDirect = true;
        bool isSilicon = dice.Chance(0.3);
        void Cell(string id, string from, string to) =>
            draft.Add(
                id,
                "rectifier",
                from,
                to,
                ("saturationAmps", isSilicon ? 1e-9 : dice.Tidy(8e-4, 3e-3, 2)),
                ("slopeVolts", isSilicon ? 0.045 : dice.Tidy(0.11, 0.16, 2)),
                ("seriesOhms", dice.Tidy(0.04, 0.2, 2)),
                ("leakageOhms", isSilicon ? 2e6 : dice.Tidy(100, 500, 2))
            );
        string[] cells;
        if (dice.Chance(0.6))
        {
            Cell("cell-1", "arm", "plus");
            Cell("cell-2", "common", "plus");
            Cell("cell-3", "minus", "arm");
            Cell("cell-4", "minus", "common");
            (cells, back) = (["cell-1", "cell-2", "cell-3", "cell-4"], "minus");
        }
        else
        {
            Cell("cell-1", "arm", "between");
            Cell("cell-2", "between", "plus");
            cells = ["cell-1", "cell-2"];
        }
        post = "plus";
        shared.Add(
            new JsonObject
            {
                ["id"] = "stack-aged",
                ["title"] = "aged stack of plates",
                ["elements"] = SheetDraft.Names(cells),
                ["mode"] = "high-drop",
                ["percent"] = 25.0,
            }
        );
    }

    private void Outlet(double rated)
    {
        double omega = draft.Omega;
        bool isFilter = isDirect && dice.Chance(0.6);
        double farads = isFilter ? dice.LogBetween(0.5, 8) / (omega * rated) : dice.LogBetween(1e-8, 2e-6);
        draft.Add("filter", "capacitor", post, back, ("farads", Dice.Tidy(farads)));
        draft.Add("w-post", "wire", post, "post-a");
        draft.Add("w-back", "wire", back, "post-b", ("ohms", dice.Tidy(0.002, 0.01)));
        if (dice.Chance(0.4))
            draft.Add("pilot", "lamp", "main-end", "common", ("volts", 18.0), ("amps", 0.1));
    }

    private void Readings(double rated)
    {
        Read("blades", "ohms", ["blade-1", "blade-2"], null, 0);
        Read("insulation", "insulation-ohms", ["blade-1", "iron"], null, 0);
        Read("across", "insulation-ohms", ["blade-1", "post-a"], null, 1);
        foreach (double at in (double[])[0, 0.3, 0.7, 1])
        {
            string place = Math.Round(100 * at).Text();
            Read("ohms-" + place, "ohms", ["post-a", "post-b"], null, at);
            Read("ohms-arm-" + place, "ohms", ["arm", "common"], null, at);
            Read("one-amp-" + place, "dc-volts", ["main-end", "arm"], ("main-end", "arm", 0), at);
            foreach ((string name, double load) in ((string, double)[])[("light", 8 * rated), ("full", 2 * rated)])
            {
                double ohms = dice.Tidy(0.9 * load, 1.1 * load);
                Read($"ac-{name}-{place}", "ac-volts", ["post-a", "post-b"], ("blade-1", "blade-2", draft.Volts), at, ohms);
                if (isDirect)
                    Read($"dc-{name}-{place}", "dc-volts", ["post-a", "post-b"], ("blade-1", "blade-2", draft.Volts), at, ohms);
                Read($"amps-{name}-{place}", "ac-amps", [], ("blade-1", "blade-2", draft.Volts), at, ohms);
                Read($"watts-{name}-{place}", "watts", [], ("blade-1", "blade-2", draft.Volts), at, ohms);
            }
        }
        if (draft.Elements.Any(e => e!["taps"] is not null))
            Read("ohms-middle", "ohms", ["middle", "arm"], null, 0.3);
        Read("low-arm", "ac-volts", ["arm", "common"], ("blade-1", "blade-2", 12), 0.6, 100);
    }

    private void Read(
        string id,
        string quantity,
        string[] between,
        (string From, string To, double Volts)? source,
        double at,
        double ohms = 0
    )
    {
        JsonObject state = new() { ["controls"] = new JsonObject { ["throttle"] = at } };
        if (source is { } s)
            state["source"] =
                s.Volts > 0
                    ? new JsonObject
                    {
                        ["from"] = s.From,
                        ["to"] = s.To,
                        ["volts"] = s.Volts,
                    }
                    : new JsonObject
                    {
                        ["from"] = s.From,
                        ["to"] = s.To,
                        ["directAmps"] = 1.0,
                    };
        if (ohms > 0)
            state["loads"] = new JsonArray(
                new JsonObject
                {
                    ["from"] = "post-a",
                    ["to"] = "post-b",
                    ["ohms"] = ohms,
                }
            );
        JsonObject reading = new()
        {
            ["id"] = id,
            ["title"] = id,
            ["quantity"] = quantity,
            ["state"] = state,
        };
        if (between.Length > 0)
            reading["between"] = SheetDraft.Names(between);
        draft.Readings.Add(reading);
    }
}
