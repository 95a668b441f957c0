using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Circuits;

/// <summary>Lays out the circuit of a reading from the sheet and the state of the unit.</summary>
internal sealed class CircuitBuilder
{
    private readonly UnitModel model;
    private readonly ReadingState state;
    private readonly bool[] reversed;
    private readonly NodeMap nodes = new();
    private readonly List<Branch> branches = [];
    private readonly List<LampPlace> lamps = [];
    private readonly List<JunctionPlace> junctions = [];

    private CircuitBuilder(UnitModel model, ReadingState state, bool[] reversed) =>
        (this.model, this.state, this.reversed) = (model, state, reversed);

    /// <param name="reversed">By element: a winding with taps or sliders whose ends are exchanged.</param>
    public static ReadingCircuit Build(UnitModel model, ReadingSpec spec, ReadingState state, bool[] reversed) =>
        new CircuitBuilder(model, state, reversed).Build([spec], []);

    /// <summary>One circuit for readings in one state with alternating current, by reading.</summary>
    public static ImmutableArray<ReadingCircuit> Build(
        UnitModel model,
        ImmutableArray<ReadingSpec> specs,
        ReadingState state,
        bool[] reversed
    )
    {
        var circuit = new CircuitBuilder(model, state, reversed).Build(specs, []);
        return [.. specs.Select((spec, place) => place == 0 ? circuit : circuit.ReadAs(spec, place))];
    }

    /// <summary>
    /// The circuit with <see cref="SenseOhms"/> in series with one of its branches, and the probes across that: volts for amps.
    /// The contacts of a slider that bridges turns are sensed where they join.
    /// </summary>
    /// <param name="sensed">A branch of the same circuit without it.</param>
    public static ReadingCircuit BuildSensing(UnitModel model, ReadingSpec spec, ReadingState state, Branch sensed) =>
        new CircuitBuilder(model, state, new bool[model.Sheet.Elements.Length]).Build([spec], [sensed]);

    /// <summary>The same with every part of a winding sensed, by probe place.</summary>
    public static ReadingCircuit BuildSensingWindings(UnitModel model, ReadingSpec spec, ReadingState state)
    {
        var reversed = new bool[model.Sheet.Elements.Length];
        var usual = Build(model, spec, state, reversed);
        return new CircuitBuilder(model, state, reversed).Build(
            [spec],
            [.. usual.Branches.Where(b => b.Kind == BranchKind.Segment && model.WindingCores[b.Index] >= 0)]
        );
    }

    /// <summary>Small against every resistance of a unit, large against the digits of a solution at 20 V [Ω].</summary>
    public const double SenseOhms = 1e-6;

    /// <summary>What is left of the path through a slider that touches nothing [Ω].</summary>
    private const double OffOhms = 1e7;

    private (int A, int B) Sense(Branch sensed)
    {
        var inner = nodes.Inner();
        for (var n = 0; n < branches.Count; n++)
            if (
                branches[n] == sensed
                || (sensed.Kind == BranchKind.Slider && branches[n].Kind == sensed.Kind && branches[n].Index == sensed.Index)
            )
                branches[n] = branches[n] with { B = inner };
        branches.Add(new Branch(inner, sensed.B, BranchKind.Load, -1, SenseOhms));
        return (inner, sensed.B);
    }

    private ReadingCircuit Build(ImmutableArray<ReadingSpec> specs, ImmutableArray<Branch> sensed)
    {
        var spec = specs[0];
        foreach (var strap in state.Joined)
            nodes.Join(strap);
        var lifted = state.Lifted.ToHashSet(StringComparer.Ordinal);
        for (var n = 0; n < model.Sheet.Elements.Length; n++)
            if (!lifted.Contains(model.Sheet.Elements[n].Id))
                AddElement(model.Sheet.Elements[n], n);
        foreach (var l in state.Loads)
            branches.Add(new Branch(nodes.Of(l.From), nodes.Of(l.To), BranchKind.Load, -1, l.Ohms, l.Henries));
        var isOhms = spec.Quantity is Quantity.Ohms or Quantity.InsulationOhms;
        var isDirect = isOhms || state.Source is { IsDirect: true };
        var (drive, ground) = isOhms ? (nodes.Of(spec.From), nodes.Of(spec.To)) : AddSource(state.Source!);
        ImmutableArray<(int A, int B)> probes =
            sensed.Length > 0
                ? [.. sensed.Select(Sense)]
                : [.. specs.Select(s => s.From.Length > 0 ? (nodes.Of(s.From), nodes.Of(s.To)) : (-1, -1))];
        ImmutableArray<Branch> all = [.. branches.Where(b => b.A != b.B)];
        return new ReadingCircuit
        {
            Model = model,
            Spec = spec,
            State = state,
            Branches = all,
            Lamps = [.. lamps],
            Junctions = [.. junctions],
            Drive = drive,
            Ground = ground,
            Probes = probes,
            IsDirect = isDirect,
            NeedsEveryHarmonic = all.Any(b => b.IsCapacitive),
            CopperFactor = (234.5 + state.Celsius) / 254.5,
            ReversedChains = reversed,
            Loops = [.. branches.Where(b => b.A == b.B && IsOnCore(b))],
            Windings = [.. branches.Where(IsOnCore).Select(b => b.Index).Distinct()],
            Elimination = Elimination.Of(nodes.Count, all, Kept(isDirect, drive, ground, probes), drive, ground, isDirect),
        };
    }

    private bool IsOnCore(Branch b) => b.Kind == BranchKind.Segment && model.WindingCores[b.Index] >= 0;

    private HashSet<int> Kept(bool isDirect, int drive, int ground, ImmutableArray<(int A, int B)> probes)
    {
        var kept = new HashSet<int> { drive, ground };
        foreach (var (a, b) in probes)
            if (a >= 0)
                kept.UnionWith([a, b]);
        foreach (var j in junctions)
            kept.UnionWith([j.A, j.B]);
        if (!isDirect)
            foreach (var l in lamps)
                kept.UnionWith([l.A, l.B]);
        return kept;
    }

    private (int Drive, int Ground) AddSource(SourceSpec s)
    {
        var (from, to) = (nodes.Of(s.From), nodes.Of(s.To));
        if (s.SeriesOhms > 0)
        {
            var inner = nodes.Inner();
            branches.Add(new Branch(inner, from, BranchKind.Load, -1, s.SeriesOhms));
            from = inner;
        }
        if (s.HasLamp)
        {
            var inner = nodes.Inner();
            AddLamp(inner, from, -1, s.LampVolts, s.LampAmps);
            from = inner;
        }
        return (from, to);
    }

    private void AddLamp(int a, int b, int element, double volts, double amps)
    {
        branches.Add(new Branch(a, b, BranchKind.Lamp, lamps.Count));
        lamps.Add(new LampPlace(a, b, element, volts, amps));
    }

    private void AddElement(Element e, int n)
    {
        var (from, to) = (nodes.Of(e.From), nodes.Of(e.To));
        if (ElementNumbers.OnlyBranch(e) is { } only)
        {
            var isClosed = e is Switch s && s.ClosedIn.Contains(PositionOf(s.Control));
            branches.Add(new Branch(from, to, only, n, isClosed ? 1 : 0));
        }
        else if (e is Winding w)
            AddWinding(w, n, from, to);
        else if (e is Lamp l)
            AddLamp(from, to, n, l.Volts, l.Amps);
        else
            AddRectifier((Rectifier)e, n, from, to);
    }

    private void AddRectifier(Rectifier d, int n, int from, int to)
    {
        var inner = nodes.Inner();
        branches.Add(new Branch(from, inner, BranchKind.Junction, junctions.Count));
        junctions.Add(new JunctionPlace(from, inner, n, d.SlopeVolts));
        branches.Add(new Branch(inner, to, BranchKind.Series, n));
        branches.Add(new Branch(from, to, BranchKind.Leakage, n));
    }

    private void AddWinding(Winding w, int n, int from, int to)
    {
        var points = new List<(double Turn, int Node)>();
        foreach (var t in w.Taps)
            points.Add((t.Turn, nodes.Of(t.To)));
        for (var k = 0; k < model.Sliders.Length; k++)
        {
            var (winding, s) = model.Sliders[k];
            if (winding != n)
                continue;
            var x = state.Controls.TryGetValue(s.Control, out var p) ? p.Throttle : 0;
            var turn = s.FromTurn + x * (s.ToTurn - s.FromTurn);
            double[] touches = s.BridgesTurns == 0 ? [turn] : [Math.Max(turn - 0.5, 0), Math.Min(turn + 0.5, w.Turns)];
            foreach (var touch in touches)
            {
                var inner = nodes.Inner();
                points.Add((touch, inner));
                branches.Add(
                    s.IsOff(x)
                        ? new Branch(inner, nodes.Of(s.To), BranchKind.Load, -1, OffOhms * touches.Length)
                        : new Branch(inner, nodes.Of(s.To), BranchKind.Slider, k, touches.Length)
                );
            }
        }
        var (start, end) = reversed[n] ? (to, from) : (from, to);
        var (lastTurn, lastNode, isFirst) = (0.0, start, true);
        foreach (var (turn, node) in points.OrderBy(p => p.Turn))
        {
            branches.Add(new Branch(lastNode, node, BranchKind.Segment, n, lastTurn, turn, isFirst));
            isFirst = false;
            (lastTurn, lastNode) = (turn, node);
        }
        branches.Add(new Branch(lastNode, end, BranchKind.Segment, n, lastTurn, w.Turns, isFirst));
    }

    private string PositionOf(string control) =>
        state.Controls.TryGetValue(control, out var p) ? p.Selector : model.Sheet.Controls.First(c => c.Id == control).Rest;
}
