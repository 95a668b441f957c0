using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Draws a whole type sheet: mains side here, secondaries, readings and the rest in their own makers.</summary>
internal sealed class SheetMaker(int seed, bool withBridge)
{
    private static readonly (double Volts, double Hertz)[] Supplies = [(115, 60), (120, 60), (230, 50), (240, 50), (100, 50)];
    private readonly Dice dice = new(seed);

    public JsonObject Make(string id)
    {
        (double volts, double hertz) =
            seed % 3 == 0 ? (230, 50)
            : seed % 3 == 1 ? (115, 60)
            : dice.Pick(Supplies);
        SheetDraft draft = new() { Volts = volts, Hertz = hertz };
        double power = dice.Tidy(25, 250, 2);
        int cores = dice.Chance(0.4) ? 2 : 1;
        string line = Mains(draft);
        int secondaries = Math.Max(cores, dice.Whole(1, 3));
        SecondaryMaker maker = new(dice, draft, withBridge);
        for (int n = 0; n < cores; n++)
        {
            double share = power / cores;
            double turns = Primary(draft, n, n == 0 || !dice.Chance(0.4) ? line : Branch(draft, line), share);
            for (int k = n; k < secondaries; k += cores)
                maker.Add(k, n, turns, share / Math.Max(1, secondaries / cores));
        }
        Insulation(draft);
        new ReadingMaker(dice, draft).Make(cores);
        return new JsonObject
        {
            ["ohmstead"] = "type-sheet/1",
            ["id"] = id,
            ["title"] = $"Drawn unit {id}, {volts.Text()} V {hertz.Text()} Hz (invented)",
            ["supply"] = new JsonObject { ["volts"] = volts, ["hertz"] = hertz },
            ["rating"] = new JsonObject { ["inputWatts"] = power, ["usableWatts"] = Dice.Tidy(0.7 * power, 2) },
            ["cores"] = draft.Cores,
            ["controls"] = draft.Controls,
            ["elements"] = draft.Elements,
            ["near"] = draft.Near,
            ["readings"] = draft.Readings,
            ["observations"] = new JsonArray(
                new JsonObject
                {
                    ["id"] = "smell-at-rest",
                    ["title"] = "It smells or is hot with nothing connected",
                    ["given"] = new JsonObject { ["primary-1:shorted-turns"] = 0.8 },
                    ["otherwise"] = 0.02,
                }
            ),
            ["takeApart"] = TakeApart(),
        };
    }

    private string Mains(SheetDraft draft)
    {
        double ohms = dice.Tidy(0.02, 0.1);
        draft.Add("cord-1", "wire", "blade-1", "lug-1", ("ohms", ohms), ("colour", "brown"));
        draft.Add("cord-2", "wire", "blade-2", "lug-2", ("ohms", ohms), ("colour", "blue"));
        draft.Near.Add(SheetDraft.Names("lug-1", "lug-2"));
        if (dice.Chance(0.4))
        {
            draft.Selector("mains", ["on", "off"], "on");
            draft.Add(
                "mains-switch",
                "switch",
                "lug-1",
                "line",
                ("control", "mains"),
                ("closedIn", SheetDraft.Names("on")),
                ("ohms", dice.Tidy(0.005, 0.03)),
                ("openOhms", dice.Tidy(5e7, 5e8, 2))
            );
            return "line";
        }
        if (!dice.Chance(0.3))
            return "lug-1";
        draft.Add(
            "mains-breaker",
            "breaker",
            "lug-1",
            "line",
            ("ohms", dice.Tidy(0.1, 0.6)),
            ("ratedAmps", 2.0),
            ("tripCurve", new JsonArray(new JsonArray(1.5, 90.0), new JsonArray(3.0, 15.0)))
        );
        return "line";
    }

    private string Branch(SheetDraft draft, string line)
    {
        draft.Selector("second", ["out", "in"], "in");
        draft.Add("second-switch", "switch", line, "line-2", ("control", "second"), ("closedIn", SheetDraft.Names("in")));
        return "line-2";
    }

    private double Primary(SheetDraft draft, int n, string line, double power)
    {
        string number = (n + 1).Text();
        double rated = draft.Volts * draft.Volts / power;
        double turns = Math.Round(draft.Volts / dice.LogBetween(0.2, 0.6));
        string winding = "primary-" + number;
        draft.Add($"joint-{winding}-a", "joint", line, winding + "-start");
        draft.Add($"joint-{winding}-b", "joint", winding + "-end", "lug-2", ("ohms", dice.Tidy(0.001, 0.004)));
        JsonObject element = draft.Add(
            winding,
            "winding",
            winding + "-start",
            winding + "-end",
            ("core", "core-" + number),
            ("turns", turns),
            ("ohms", Dice.Tidy(rated * dice.LogBetween(0.015, 0.06))),
            ("leakageHenries", Dice.Tidy(rated * dice.LogBetween(0.005, 0.04) / draft.Omega))
        );
        if (dice.Chance(0.3))
            element["spread"] = new JsonObject { ["ohms"] = 0.05, ["turns"] = 0.004 };
        double magnetising = power / draft.Volts * dice.LogBetween(0.04, 0.25);
        JsonObject core = new()
        {
            ["id"] = "core-" + number,
            ["referenceWinding"] = winding,
            ["lossOhms"] = Dice.Tidy(rated / dice.LogBetween(0.02, 0.09)),
        };
        if (dice.Chance(0.3))
            core["magnetisingHenries"] = Dice.Tidy(draft.Volts / magnetising / draft.Omega);
        else
            core["excitation"] = Curve(draft.Volts, magnetising);
        if (dice.Chance(0.25))
            core["spread"] = new JsonObject { ["lossOhms"] = 0.15 };
        draft.Cores.Add(core);
        return turns;
    }

    private JsonArray Curve(double volts, double amps)
    {
        double knee = dice.Between(0.2, 0.45);
        (double Volts, double Amps)[] points =
        [
            (0, 0),
            (0.5, knee),
            (0.9, dice.Between(knee + 0.2, 0.85)),
            (1, 1),
            (1.1, dice.Between(1.3, 1.9)),
        ];
        return [.. points.Select(p => new JsonArray(Dice.Tidy(p.Volts * volts), Dice.Tidy(p.Amps * amps)))];
    }

    private void Insulation(SheetDraft draft)
    {
        draft.Add("ins-primary-core", "insulation", "primary-1-start", "iron", ("ohms", dice.Tidy(1e8, 6e8, 2)));
        int secondaries = draft.Outputs.Max(output => output.Secondary) + 1;
        for (int n = 1; n <= secondaries; n++)
        {
            string sec = "sec-" + n.Text();
            if (n == 1 || dice.Chance(0.5))
                draft.Add("ins-" + sec + "-core", "insulation", sec + "-start", "iron", ("ohms", dice.Tidy(1e8, 6e8, 2)));
            if (dice.Chance(0.4))
                draft.Add("ins-primary-" + sec, "insulation", "primary-1-end", sec + "-end", ("ohms", dice.Tidy(2e8, 9e8, 2)));
        }
    }

    private JsonArray TakeApart() =>
        [Step("screws", 1.5, 2.0, []), Step("cover", 2.0, 3.0, ["screws"]), Step("core-out", 6.0, 9.0, ["cover"])];

    private JsonObject Step(string id, double minutesOut, double minutesIn, string[] after) =>
        new()
        {
            ["id"] = id,
            ["title"] = id,
            ["after"] = SheetDraft.Names(after),
            ["minutesOut"] = minutesOut,
            ["minutesIn"] = minutesIn,
            ["breakPercent"] = (double)dice.Whole(0, 8),
            ["price"] = (double)dice.Whole(0, 20),
        };
}
