using System.Collections.Immutable;
using System.Globalization;

namespace Ohmstead.Workshop.Testing;

/// <summary>
/// The curve of a heat run to look at: what was read, the fan of where it may go, and the forecast after each reading, which narrows.
/// Places are in a picture 400 wide and 310 high, so that a telephone shows its letters in full size. The fan only joins the last reading to the ends of the forecast, as one mass would.
/// </summary>
/// <param name="Read">The readings, a polyline from nothing.</param>
/// <param name="Dots">The readings, each.</param>
/// <param name="Fan">The 90 % band, a polygon; empty before there is a forecast.</param>
/// <param name="Middle">The middle of it.</param>
/// <param name="Bars">The forecasts.</param>
/// <param name="LimitY">The limit.</param>
/// <param name="Rises">Marks of the rise [°C], up.</param>
/// <param name="Hours">Marks of time, to the right.</param>
public sealed record HeatPicture(
    string Read,
    ImmutableArray<(string X, string Y)> Dots,
    string Fan,
    string Middle,
    ImmutableArray<HeatBar> Bars,
    string LimitY,
    ImmutableArray<(string Y, string Label)> Rises,
    ImmutableArray<(string X, string Label)> Hours
)
{
    private const double Left = 44;
    private const double Right = 258;
    private const double Top = 14;
    private const double Bottom = 270;

    /// <summary>What a core and all on it take to warm by two thirds [min]; of the forecast's own usual times.</summary>
    private const double SlowMinutes = 64;

    private const int MostBars = 3;

    /// <summary>Beside one another along the time.</summary>
    private const double MostHours = 5;

    /// <summary>Draws it.</summary>
    public static HeatPicture Of(HeatRunState run, ImmutableArray<HeatStep> steps)
    {
        var last = run.Readings.IsEmpty ? 0 : run.Readings[^1].Minutes;
        var minutes = Math.Max(180, 60 * Math.Ceiling((last + 60) / 60));
        var most = steps.Select(s => s.Answer.Final.HighKelvin).Append(run.Begun.LimitKelvin).Concat(run.Readings.Select(run.RiseAt)).Max();
        var top = 20 * Math.Ceiling((most + 5) / 20);
        double X(double m) => Left + ((Right - Left) * m / minutes);
        double Y(double kelvin) => Bottom - ((Bottom - Top) * Math.Clamp(kelvin, 0, top) / top);
        string At(double m, double kelvin) => $"{Svg(X(m))},{Svg(Y(kelvin))}";
        var points = run.Readings.Select(r => (r.Minutes, Rise: run.RiseAt(r))).ToList();
        var times = Enumerable.Range(0, 25).Select(n => last + ((minutes - last) * n / 24)).ToList();
        IEnumerable<string> Way(double from, double to) =>
            times.Select(t => At(t, from + ((to - from) * (1 - Math.Exp(-(t - last) / SlowMinutes)))));
        var (fan, middle) = ("", "");
        if (steps is [.., var now])
        {
            var (start, final) = (points[^1].Rise, now.Answer.Final);
            fan = string.Join(' ', Way(start, final.HighKelvin).Concat(Way(start, final.LowKelvin).Reverse()));
            middle = string.Join(' ', Way(start, final.RiseKelvin));
        }
        return new(
            string.Join(' ', points.Select(p => At(p.Minutes, p.Rise)).Prepend(At(0, 0))),
            [.. points.Select(p => (Svg(X(p.Minutes)), Svg(Y(p.Rise))))],
            fan,
            middle,
            [.. Chosen(steps).Select((s, n) => Bar(s, n, Y, s == steps[^1]))],
            Svg(Y(run.Begun.LimitKelvin)),
            [.. Enumerable.Range(0, (int)(top / 20) + 1).Select(n => (Svg(Y(20 * n)), (20 * n).ToString(CultureInfo.InvariantCulture)))],
            [
                .. Enumerable
                    .Range(0, (int)(minutes / 60) + 1)
                    .Where(h => h % Math.Ceiling(minutes / 60 / MostHours) == 0)
                    .Select(h => (Svg(X(60 * h)), h == 0 ? "0" : $"{h.ToString(CultureInfo.InvariantCulture)} h")),
            ]
        );
    }

    /// <summary>The first forecast, the last, and as many between them as find room.</summary>
    private static IEnumerable<HeatStep> Chosen(ImmutableArray<HeatStep> steps) =>
        steps.Length <= MostBars
            ? steps
            : Enumerable.Range(0, MostBars).Select(n => steps[(int)Math.Round((steps.Length - 1) * n / (double)(MostBars - 1))]);

    private static HeatBar Bar(HeatStep step, int n, Func<double, double> y, bool isLast)
    {
        var (high, low) = (y(step.Answer.Final.HighKelvin), y(step.Answer.Final.LowKelvin));
        return new(
            Svg(Right + 28 + (38 * n)),
            Svg(high),
            Svg(Math.Max(low - high, 3)),
            step.Minutes.ToString("0", CultureInfo.InvariantCulture),
            isLast
        );
    }

    private static string Svg(double v) => v.ToString("0.#", CultureInfo.InvariantCulture);
}

/// <summary>The forecast after so many minutes, as a bar.</summary>
public sealed record HeatBar(string X, string Y, string Height, string Minutes, bool IsLast);
