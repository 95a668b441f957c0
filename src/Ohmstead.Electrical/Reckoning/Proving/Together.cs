using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>together</c>: two and more units on one layout, in phase or opposed, and what a pulled plug carries (docs/methods/proving.md).</summary>
/// <param name="Units">The units.</param>
/// <param name="Pairs">Volts between hot posts, commons joined, at the same setting.</param>
/// <param name="MeterPercent">Limit of error of the meter.</param>
/// <param name="MeterFloor">The fixed part of it [V].</param>
/// <param name="Bridges">Posts of two units joined by a train or a wire.</param>
public sealed record Together(
    ImmutableArray<JoinedUnit> Units,
    ImmutableArray<ReadPair> Pairs,
    double MeterPercent,
    double MeterFloor,
    ImmutableArray<PostBridge> Bridges
) : Question
{
    private const double InPhaseDegrees = 20;
    private const double OpposedDegrees = 160;

    /// <summary>Reads its fields.</summary>
    public static Together Read(QuestionFields fields)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        var units = fields.List(
            "units",
            u => new JoinedUnit(
                u.NewId("id", known),
                u.Number("volts", NumberRange.Positive),
                u.Number("supplyVolts", NumberRange.Positive),
                u.Number("sourceOhms", NumberRange.NotNegative),
                u.Flag("polarised")
            ),
            least: 2,
            most: 60
        );
        (string A, string B) Two(QuestionFields p)
        {
            var (a, b) = (p.KnownId("a", known, "unit"), p.KnownId("b", known, "unit"));
            if (a == b && a.Length > 0)
                p.Report("b", "is the same unit as a", "name two units");
            return (a, b);
        }
        var pairs = fields.List(
            "pairs",
            p => Two(p) is var (a, b) ? new ReadPair(a, b, p.Number("volts", NumberRange.NotNegative)) : null!,
            least: 0
        );
        var bridges = fields.OptionalList("bridges", p => ReadBridge(p, Two(p), units));
        var meter = fields.Part("meter");
        return new(
            units,
            pairs,
            meter?.Number("percent", NumberRange.Percent, 0.8) ?? 0.8,
            meter?.Number("floor", NumberRange.NotNegative, 0.03) ?? 0.03,
            bridges
        );
    }

    private static PostBridge ReadBridge(QuestionFields at, (string A, string B) two, ImmutableArray<JoinedUnit> units)
    {
        var path = at.Number("pathOhms", NumberRange.NotNegative, 0.05);
        if (path + units.Where(u => u.Id == two.A || u.Id == two.B).Sum(u => u.SourceOhms) == 0)
            at.Report("pathOhms", "is 0 between two sources of 0 Ω", "a number above 0 is expected");
        return new(two.A, two.B, path);
    }

    /// <inheritdoc/>
    public override TogetherAnswer Answer()
    {
        var pairs = Pairs.Select(Judge).ToImmutableArray();
        var sides = PhaseSides.Of(
            [.. Units.Select(u => u.Id)],
            [
                .. pairs
                    .Where(p => p.Verdict is PairPhase.InPhase or PairPhase.Opposed)
                    .Select(p => (p.A, p.B, p.Verdict == PairPhase.Opposed)),
            ]
        );
        var turn = sides is { IsClash: false, Groups: 1 } ? ToTurn(sides) : [];
        ImmutableArray<string> Sorted(bool polarised) =>
            [.. turn.Where(u => u.Polarised == polarised).Select(u => u.Id).Order(StringComparer.Ordinal)];
        var answer = new TogetherAnswer(
            pairs,
            sides.IsClash ? 0 : sides.Groups - 1,
            sides.IsClash,
            Sorted(false),
            Sorted(true),
            [.. Bridges.Select(OfBridge)],
            [
                .. Units.SelectMany(own =>
                    Units.Where(u => u != own).Select(from => new BarePlug(own.Id, from.Id, from.Volts * own.SupplyVolts / own.Volts))
                ),
            ]
        );
        return answer with
        {
            Words = TogetherWords.Of(answer),
            Cautions = TogetherWords.Cautions(answer),
            Outside = [TestRecord.NoCertification],
        };
    }

    private PairPhase Judge(ReadPair pair)
    {
        var (a, b, v) = (Of(pair.A).Volts, Of(pair.B).Volts, pair.Volts);
        var error = new[] { a, b, v }.Sum(x => (MeterPercent / 100 * x) + MeterFloor);
        var degrees = Math.Acos(Math.Clamp(((a * a) + (b * b) - (v * v)) / (2 * a * b), -1, 1)) * 180 / Math.PI;
        return new(
            pair.A,
            pair.B,
            degrees,
            v > a + b + error || v < Math.Abs(a - b) - error ? PairPhase.NotPossible
                : degrees <= InPhaseDegrees ? PairPhase.InPhase
                : degrees >= OpposedDegrees ? PairPhase.Opposed
                : PairPhase.Neither
        );
    }

    private JoinedUnit Of(string id) => Units.First(u => u.Id == id);

    /// <summary>The side with fewer polarized plugs, then with fewer units, then with the earlier id.</summary>
    private List<JoinedUnit> ToTurn(PhaseSides sides)
    {
        List<JoinedUnit> Side(bool turned) => [.. Units.Where(u => sides.Turned.Contains(u.Id) == turned)];
        return new[] { Side(false), Side(true) }
            .OrderBy(s => s.Count(u => u.Polarised))
            .ThenBy(s => s.Count)
            .ThenBy(s => s.Select(u => u.Id).Min(StringComparer.Ordinal), StringComparer.Ordinal)
            .First();
    }

    private BridgeCurrent OfBridge(PostBridge bridge)
    {
        var read = Pairs.FirstOrDefault(p => (p.A == bridge.A && p.B == bridge.B) || (p.A == bridge.B && p.B == bridge.A));
        double? amps = read?.Volts / (Of(bridge.A).SourceOhms + Of(bridge.B).SourceOhms + bridge.PathOhms);
        return new(bridge.A, bridge.B, read?.Volts, amps, read?.Volts * amps);
    }
}

/// <summary>A unit that shares a layout.</summary>
/// <param name="Id">Its tag.</param>
/// <param name="Volts">Of its hot post.</param>
/// <param name="SupplyVolts">The line at its plug.</param>
/// <param name="SourceOhms">Behind the post.</param>
/// <param name="Polarised">Its plug goes in one way only.</param>
public sealed record JoinedUnit(string Id, double Volts, double SupplyVolts, double SourceOhms, bool Polarised);

/// <summary>Volts read between two hot posts.</summary>
public sealed record ReadPair(string A, string B, double Volts);

/// <summary>A way from post to post.</summary>
public sealed record PostBridge(string A, string B, double PathOhms);

/// <summary>What <c>together</c> answers.</summary>
/// <param name="Pairs">Each pair read.</param>
/// <param name="Missing">Pairs still to read before all hang together; 0 with a clash.</param>
/// <param name="Clash">The pairs contradict one another.</param>
/// <param name="TurnCord">Plugs to turn.</param>
/// <param name="ExchangeInside">Units whose cord leads are to be exchanged inside.</param>
/// <param name="Bridges">What flows where posts are bridged.</param>
/// <param name="BarePlug">What a pulled plug carries.</param>
public sealed record TogetherAnswer(
    ImmutableArray<PairPhase> Pairs,
    int Missing,
    bool Clash,
    ImmutableArray<string> TurnCord,
    ImmutableArray<string> ExchangeInside,
    ImmutableArray<BridgeCurrent> Bridges,
    ImmutableArray<BarePlug> BarePlug
) : Answer;

/// <summary>How two units lie to each other.</summary>
public sealed record PairPhase(string A, string B, double Degrees, string Verdict)
{
    internal const string InPhase = "in phase";
    internal const string Opposed = "opposed";
    internal const string Neither = "neither";
    internal const string NotPossible = "not possible";
}

/// <summary>What flows through a bridge; null where the pair was not read.</summary>
public sealed record BridgeCurrent(string A, string B, double? Volts, double? Amps, double? Watts);

/// <summary>What a pulled plug carries while the posts are joined.</summary>
public sealed record BarePlug(string Id, string FedFrom, double BarePlugVolts);
