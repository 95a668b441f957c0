namespace Ohmstead.Perf.Experiments.Heat;

/// <summary>
/// An invented unit warmed on paper: two masses, winding and core, by Runge and Kutta. It shares nothing with the forecast that is
/// judged by it: no shapes of exponentials, no temperatures by ohms but its own.
/// </summary>
/// <param name="random">Draws the unit, the room and the meter's scatter.</param>
/// <param name="repeatPercent">Of the ohmmeter.</param>
internal sealed class SimulatedRun(Random random, double repeatPercent)
{
    private const double K = 234.5;
    private const double StepMinutes = 1.0 / 12;
    private const double OffMinutes = 0.5;

    private readonly double coldOhms = 2 + (2 * random.NextDouble());
    private readonly double startCelsius = Math.Round(17 + (8 * random.NextDouble()), 1);
    private readonly double driftPerMinute = ((4 * random.NextDouble()) - 2) / 60;
    private readonly double better = random.Next(2) == 0 ? 0 : 0.004 * random.NextDouble();
    private readonly double copperWatts = 9 + (10 * random.NextDouble());
    private readonly double ironWatts = 6 + (8 * random.NextDouble());
    private readonly double wantedRise = 30 + (65 * random.NextDouble());
    private readonly double slowMinutes = 64 * Math.Exp(0.25 * Gauss(random));
    private readonly double fastMinutes = 5 * Math.Exp(0.3 * Gauss(random));
    private readonly double windingShare = 0.14 + (0.16 * random.NextDouble());

    /// <summary>The question that a person would have typed after so many minutes, and what was true.</summary>
    /// <param name="minutes">Of the readings in between.</param>
    /// <param name="end">Minute of the last switch-off.</param>
    /// <param name="limitKelvin">The limit asked about.</param>
    public (string Question, double AtOffKelvin, double FinalKelvin) Take(IReadOnlyList<double> minutes, double end, double limitKelvin)
    {
        var body = new Body(this);
        var during = new List<string>();
        foreach (var at in minutes)
        {
            body.RunTo(at, on: true);
            var room = Math.Round(RoomAt(at), 1);
            body.RunTo(at + (20 / 60.0), on: false);
            during.Add(
                FormattableString.Invariant(
                    $"{{ \"minutes\": {at:R}, \"secondsAfter\": 20, \"ohms\": {body.Read():R}, \"ambientCelsius\": {room:R} }}"
                )
            );
            body.RunTo(at + OffMinutes, on: false);
        }
        body.RunTo(end, on: true);
        var atOff = body.Winding - RoomAt(end);
        var after = new List<string>();
        foreach (var seconds in new[] { 20, 30, 45, 60, 90, 120 })
        {
            body.RunTo(end + (seconds / 60.0), on: false);
            after.Add(FormattableString.Invariant($"{{ \"seconds\": {seconds}, \"ohms\": {body.Read():R} }}"));
        }
        FormattableString text = $$"""
            { "ohmstead": "question/1", "question": "heat-run", "cold": { "ohms": {{Noisy(
                coldOhms
            ):R}}, "celsius": {{startCelsius:R}} }, "repeatPercent": {{repeatPercent}},
              "endMinutes": {{end:R}}, "endCelsius": {{Math.Round(RoomAt(end), 1):R}}, "limitKelvin": {{limitKelvin:R}},
            """;
        return (
            $"{FormattableString.Invariant(text)} \"during\": [{string.Join(',', during)}], \"after\": [{string.Join(',', after)}] }}",
            atOff,
            new Body(this).FinalRise(RoomAt(end))
        );
    }

    private double RoomAt(double minutes) => startCelsius + (driftPerMinute * minutes);

    private double Noisy(double ohms) => Math.Round(ohms * (1 + (repeatPercent / 100 * Gauss(random))), 4);

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private sealed class Body
    {
        private readonly SimulatedRun of;
        private readonly double between,
            away,
            windingHeat,
            coreHeat;
        private double core,
            time;

        public Body(SimulatedRun run)
        {
            (of, Winding, core) = (run, run.startCelsius, run.startCelsius);
            // The unit is made for its final rise and its two times: heat capacities and conductances that come to them, by turns.
            var hot = run.copperWatts * (K + run.startCelsius + run.wantedRise) / (K + 20);
            var coreRise = 0.8 * run.wantedRise;
            for (var n = 0; n < 200; n++)
            {
                away = (hot + run.ironWatts) / (coreRise * (1 + (run.better * coreRise)));
                // What copper loss gains with each degree holds the heat back; what a hotter case gains lets it go.
                var heat = run.slowMinutes * ((away * (1 + (run.better * coreRise))) - (run.copperWatts / (K + 20)));
                (windingHeat, coreHeat) = (run.windingShare * heat, (1 - run.windingShare) * heat);
                between = windingHeat * coreHeat / heat / run.fastMinutes;
                coreRise = (0.5 * coreRise) + (0.5 * (run.wantedRise - (hot / between)));
            }
        }

        public double Winding { get; private set; }

        public double Read() => of.Noisy(of.coldOhms * (K + Winding) / (K + of.startCelsius));

        public void RunTo(double end, bool on)
        {
            while (time < end - 1e-9)
            {
                var h = Math.Min(StepMinutes, end - time);
                Step(h, on, of.RoomAt(time + (h / 2)));
                time += h;
            }
        }

        /// <summary>The rise after hours in a room that stays as it is.</summary>
        public double FinalRise(double room)
        {
            for (var n = 0; n < 40 * 60 * 2; n++)
                Step(0.5, true, room);
            return Winding - room;
        }

        private void Step(double h, bool on, double room)
        {
            var (w, c) = (Winding, core);
            var a = Slope(w, c, on, room);
            var b = Slope(w + (h / 2 * a.W), c + (h / 2 * a.C), on, room);
            var d = Slope(w + (h / 2 * b.W), c + (h / 2 * b.C), on, room);
            var e = Slope(w + (h * d.W), c + (h * d.C), on, room);
            Winding = w + (h / 6 * (a.W + (2 * b.W) + (2 * d.W) + e.W));
            core = c + (h / 6 * (a.C + (2 * b.C) + (2 * d.C) + e.C));
        }

        private (double W, double C) Slope(double w, double c, bool on, double room)
        {
            var copper = on ? of.copperWatts * (K + w) / (K + 20) : 0;
            var over = between * (w - c);
            var out_ = away * (c - room) * (1 + (of.better * Math.Abs(c - room)));
            return ((copper - over) / windingHeat, ((on ? of.ironWatts : 0) + over - out_) / coreHeat);
        }
    }
}
