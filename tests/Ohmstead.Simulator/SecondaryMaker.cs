using System.Text.Json.Nodes;

namespace Ohmstead.Simulator;

/// <summary>Draws a secondary winding with its taps, sliders, breaker, switches, lamp and rectifiers.</summary>
internal sealed class SecondaryMaker(Dice dice, SheetDraft draft, bool withBridge)
{
    private readonly int mostRectifiers = withBridge ? 6 : 2;
    private int sliders;
    private int rectifiers;

    public void Add(int index, int core, double primaryTurns, double power)
    {
        string sec = "sec-" + (index + 1).Text();
        double volts = dice.Between(6, 26);
        double turns = Math.Max(12, Math.Round(1.04 * volts / draft.Volts * primaryTurns));
        double rated = volts * volts / power;
        JsonObject winding = draft.Add(
            sec,
            "winding",
            sec + "-start",
            sec + "-end",
            ("core", "core-" + (core + 1).Text()),
            ("turns", turns),
            ("ohms", Dice.Tidy(rated * dice.LogBetween(0.015, 0.06)))
        );
        if (dice.Chance(0.8))
            winding["leakageHenries"] = Dice.Tidy(rated * dice.LogBetween(0.004, 0.03) / draft.Omega);

        string common = "post-" + sec + "-common";
        string near = sec + "-out";
        draft.Add("joint-" + sec, "joint", sec + "-start", near);
        if (dice.Chance(0.5))
        {
            JsonObject breaker = draft.Add(
                "breaker-" + sec,
                "breaker",
                near,
                near + "-2",
                ("ohms", dice.Tidy(0.02, 0.08)),
                ("ratedAmps", 6.0),
                ("tripCurve", new JsonArray(new JsonArray(1.5, 80.0), new JsonArray(3.0, 14.0), new JsonArray(5.0, 4.0)))
            );
            if (dice.Chance(0.3))
                breaker["spread"] = new JsonObject { ["ohms"] = 0.4 };
            near += "-2";
        }
        draft.Add("w-" + sec + "-common", "wire", near, common, ("colour", "black"));
        string post = Post(sec + "-end", sec);
        double load = rated * dice.LogBetween(1, 3);
        List<Output> own = [new(post, common, index, volts, load, Liftable: "w-" + sec)];

        int taps = index == 0 ? dice.Whole(1, 2) : dice.Whole(0, 2);
        double turn = Math.Round(turns * dice.Between(0.15, 0.4));
        for (int n = 0; n < taps; n++, turn = Math.Min(turns - 1, turn + Math.Round(turns * dice.Between(0.15, 0.4))))
        {
            string tap = $"{sec}-tap-{(n + 1).Text()}";
            JsonArray list = winding["taps"] as JsonArray ?? [];
            list.Add(new JsonObject { ["turn"] = turn, ["to"] = tap });
            winding["taps"] = list;
            own.Add(new Output(Post(tap, tap), common, index, volts * turn / turns, load * turn / turns, Liftable: "w-" + tap));
        }
        if (index < 2 && dice.Chance(0.75))
            own.AddRange(Sliders(winding, sec, turns, volts, common, index, load));
        if (dice.Chance(0.6))
        {
            Output lit = dice.Pick(own);
            draft.Add(
                "lamp-" + sec,
                "lamp",
                lit.Throttle is null ? Lead(lit) : lit.Post,
                common,
                ("volts", Dice.Tidy(lit.Volts * dice.Between(0.9, 1.4), 2)),
                ("amps", dice.Tidy(0.05, 0.4, 2))
            );
        }
        if (withBridge && rectifiers == 0)
            own.Add(Bridge(sec, index, volts, common, own));
        else if (rectifiers < mostRectifiers && dice.Chance(0.75))
            own.Add(Rectifier(sec, index, volts, common, own, taps));
        draft.Near.Add(
            SheetDraft.Names(own.Select(output => output.Post).Append(common).Concat(own.Select(output => output.Common)).Distinct())
        );
        draft.Outputs.AddRange(own);
    }

    private static string Lead(Output output) => output.Post.Replace("post-", "lead-", StringComparison.Ordinal);

    private string Post(string from, string name)
    {
        draft.Add("joint-" + name + "-lead", "joint", from, "lead-" + name, ("ohms", dice.Tidy(0.001, 0.004)));
        draft.Add("w-" + name, "wire", "lead-" + name, "post-" + name, ("ohms", dice.Tidy(0.002, 0.012)), ("colour", "white"));
        return "post-" + name;
    }

    private IEnumerable<Output> Sliders(JsonObject winding, string sec, double turns, double volts, string common, int index, double load)
    {
        JsonArray list = [];
        int wanted = dice.Whole(1, 2);
        for (int n = 0; n < wanted && sliders < 2; n++)
        {
            string name = "arm-" + (++sliders).Text();
            string control = "throttle-" + sliders.Text();
            draft.Controls.Add(new JsonObject { ["id"] = control, ["kind"] = "throttle" });
            (double least, double most) = (Math.Round(turns * dice.Between(0, 0.3)), Math.Round(turns * dice.Between(0.85, 1)));
            JsonObject slider = new()
            {
                ["id"] = "slider-" + sliders.Text(),
                ["control"] = control,
                ["fromTurn"] = least,
                ["toTurn"] = most,
                ["to"] = name,
                ["contactOhms"] = dice.Tidy(0.03, 0.2, 2),
                ["bridgesTurns"] = dice.Chance(0.6) ? 1 : 0,
            };
            if (dice.Chance(0.3))
                slider["faults"] = new JsonObject { ["worn"] = 45.0 };
            list.Add(slider);
            string feed = name;
            (string, string, string)? selector = null;
            if (dice.Chance(0.6))
            {
                string button = "button-" + sliders.Text();
                draft.Selector(button, ["rest", "pressed"], "rest");
                draft.Add(
                    button + "-contact",
                    "switch",
                    name,
                    name + "-feed",
                    ("control", button),
                    ("closedIn", SheetDraft.Names("rest")),
                    ("ohms", dice.Tidy(0.006, 0.03))
                );
                (feed, selector) = (name + "-feed", (button, "rest", "pressed"));
            }
            yield return new Output(
                Post(feed, name),
                common,
                index,
                volts * most / turns,
                load,
                Throttle: control,
                Selector: selector,
                Liftable: "w-" + name
            );
        }
        if (list.Count > 0)
            winding["sliders"] = list;
    }

    /// <summary>A half-wave branch, or both ends of a winding to one post with a tap as the return.</summary>
    private Output Rectifier(string sec, int index, double volts, string common, List<Output> own, int taps)
    {
        string dc = "post-" + sec + "-dc";
        double load = dice.LogBetween(4, 40);
        Output source = dice.Pick(own);
        string feed = source.Throttle is null ? Lead(source) : source.Post;
        if (taps > 0 && rectifiers == 0 && dice.Chance(0.35))
        {
            Disc(sec + "-a", "lead-" + sec, sec + "-stud");
            Disc(sec + "-b", sec + "-start", sec + "-stud");
            draft.Add("w-" + sec + "-dc", "wire", sec + "-stud", dc, ("colour", "orange"));
            return new Output(dc, own[1].Post, index, volts / 2, load, Direct: true, Liftable: "w-" + sec + "-dc");
        }
        (string from, string to) = dice.Chance(0.7) ? (feed, sec + "-stud") : (sec + "-stud", feed);
        Disc(sec, from, to);
        double ohms = dice.Tidy(0.5, 4, 2);
        if (!dice.Chance(0.4))
        {
            JsonObject resistor = draft.Add("dropper-" + sec, "resistor", sec + "-stud", dc, ("ohms", ohms));
            if (dice.Chance(0.4))
                resistor["spread"] = new JsonObject { ["ohms"] = 0.04 };
            return new Output(dc, common, index, 0.4 * source.Volts, load, Direct: true, Throttle: source.Throttle);
        }
        string control = "half-" + sec;
        draft.Selector(control, ["off", "first", "second"], "off");
        draft.Add("ballast-" + sec, "resistor", feed, sec + "-hold", ("ohms", ohms));
        draft.Add("hold-" + sec, "switch", sec + "-hold", sec + "-stud", ("control", control), ("closedIn", SheetDraft.Names("second")));
        draft.Add("out-" + sec, "switch", sec + "-stud", dc, ("control", control), ("closedIn", SheetDraft.Names("first", "second")));
        return new Output(
            dc,
            common,
            index,
            0.4 * source.Volts,
            load,
            Direct: true,
            Throttle: source.Throttle,
            Selector: (control, dice.Chance(0.5) ? "first" : "second", "off")
        );
    }

    /// <summary>Four discs between an output and a pair of posts of their own, which hangs on nothing else.</summary>
    private Output Bridge(string sec, int index, double volts, string common, List<Output> own)
    {
        Output source = dice.Pick(own);
        string feed = source.Throttle is null ? Lead(source) : source.Post;
        (string plus, string minus) = ("post-" + sec + "-plus", "post-" + sec + "-minus");
        Disc(sec + "-a", feed, sec + "-stud");
        Disc(sec + "-b", common, sec + "-stud");
        Disc(sec + "-c", minus, feed);
        Disc(sec + "-d", minus, common);
        draft.Add("w-" + sec + "-plus", "wire", sec + "-stud", plus, ("colour", "orange"));
        return new Output(
            plus,
            minus,
            index,
            0.9 * Math.Min(volts, source.Volts),
            dice.LogBetween(4, 40),
            Direct: true,
            Throttle: source.Throttle,
            Selector: source.Selector,
            Liftable: "w-" + sec + "-plus"
        );
    }

    private void Disc(string name, string from, string to)
    {
        rectifiers++;
        bool silicon = dice.Chance(0.4);
        draft.Add(
            "disc-" + name,
            "rectifier",
            from,
            to,
            ("saturationAmps", silicon ? dice.Tidy(2e-10, 5e-9, 2) : dice.Tidy(1e-3, 5e-3, 2)),
            ("slopeVolts", silicon ? 0.045 : dice.Tidy(0.09, 0.16, 2)),
            ("seriesOhms", dice.Tidy(0.02, 0.2, 2)),
            ("leakageOhms", silicon ? dice.Tidy(1e6, 1e8, 2) : dice.Tidy(60, 300, 2))
        );
    }
}
