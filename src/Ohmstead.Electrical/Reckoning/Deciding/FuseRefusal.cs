using Ohmstead.Electrical.Reckoning.Proving;

namespace Ohmstead.Electrical.Reckoning.Deciding;

/// <summary>Why no fuse can be put in, and what to do about it.</summary>
internal static class FuseRefusal
{
    /// <summary>In a sentence or two.</summary>
    public static string Of(FuseChoice asked)
    {
        var (choices, bears) = (asked.Choices, WireSeconds(asked));
        if (choices.IsEmpty)
            return FormattableString.Invariant(
                $"No fuse of this list is rated for {asked.MarginTimes * asked.LoadAmps:0.##} A or more. Split the load over two wires, each with its own fuse."
            );
        var gauge = Mends(asked);
        if (choices.Any(c => c.Guards))
            return $"Each fuse that guards this wire opens at switch-on.{(gauge is { } slow ? FormattableString.Invariant($" Use {slow} AWG and a slower fuse.") : "")}";
        return
            gauge is { } thicker
            && (asked.Wire.CarriesAmps < choices.Min(c => c.RatedAmps) || choices.Any(c => c.OpensWithinSeconds <= bears))
            ? FormattableString.Invariant($"This wire is too thin for this load: use {thicker} AWG.")
            : FormattableString.Invariant(
                $"On a dead short, {asked.ShortAmps:0.#} A, no fuse is sure to open in the {bears:0.##} s that the wire bears it. Use thicker wire."
            );
    }

    private static double WireSeconds(FuseChoice asked) =>
        Standards.WireHeat.Seconds(asked.Wire.SquareMillimetres, asked.ShortAmps, asked.Wire.K);

    /// <summary>The thinnest usual gauge with which a fuse would do, the short as it is; null where none is thick enough.</summary>
    private static int? Mends(FuseChoice asked) =>
        LoadWire
            .Gauges.Where(g => Cord.AreaOf(g) > asked.Wire.SquareMillimetres)
            .Select(g => (int?)g)
            .FirstOrDefault(g => (asked with { Wire = asked.Wire with { SquareMillimetres = Cord.AreaOf(g!.Value) } }).Pick is not null);
}
