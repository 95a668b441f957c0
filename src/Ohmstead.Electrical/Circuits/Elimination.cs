using System.Collections.Immutable;

namespace Ohmstead.Electrical.Circuits;

/// <summary>
/// The plan by which the nodes of a circuit are eliminated, made once per circuit: star–mesh steps in the order of least
/// neighbours, as a flat program over edge slots. Nodes that touch only resistances go first, in real arithmetic; nodes of
/// windings, capacitors and inductive loads next, in complex arithmetic; what is kept (source, probes, lamps, junctions) remains.
/// </summary>
/// <remarks>
/// A star–mesh step adds products of admittances and never subtracts, so a path of 10⁻⁹ S beside one of 10³ S keeps all its
/// digits. Nodes without any path to a kept node fall away by themselves.
/// </remarks>
internal sealed class Elimination
{
    /// <summary>Number of edge slots.</summary>
    public required int Slots { get; init; }

    /// <summary>The slot of each branch; −1 for the lamps and junctions that the solver holds itself.</summary>
    public required ImmutableArray<int> BranchSlots { get; init; }

    /// <summary>Steps over real edges: count d, then d edge slots, then d(d−1)/2 target slots.</summary>
    public required int[] RealSteps { get; init; }

    /// <summary>Steps over complex edges: place, d, d pairs (slot, place), then d(d−1)/2 target slots.</summary>
    public required int[] ComplexSteps { get; init; }

    /// <summary>Slots that are alive when the complex steps begin.</summary>
    public required int[] AliveSlots { get; init; }

    /// <summary>By node: its place among the nodes of the complex steps; −1 elsewhere.</summary>
    public required int[] CouplingPlaces { get; init; }

    /// <summary>Number of nodes that take part in the complex steps or remain.</summary>
    public required int Couplings { get; init; }

    /// <summary>By node: its row in the remaining equations; <see cref="DriveRow"/>, <see cref="GroundRow"/> or −3 when eliminated.</summary>
    public required int[] Rows { get; init; }

    /// <summary>Number of unknown nodes in the remaining equations.</summary>
    public required int Unknowns { get; init; }

    /// <summary>Edges among the remaining nodes: slot and the two rows.</summary>
    public required (int Slot, int RowA, int RowB)[] Remaining { get; init; }

    /// <summary>By node: which connected part it belongs to.</summary>
    public required int[] Parts { get; init; }

    /// <summary>The row of the driven node.</summary>
    public const int DriveRow = -2;

    /// <summary>The row of a node that is held at zero.</summary>
    public const int GroundRow = -1;

    private const int Eliminated = -3;

    public static Elimination Of(int nodeCount, ImmutableArray<Branch> branches, HashSet<int> kept, int drive, int ground, bool isDirect)
    {
        var mesh = new MeshOrder(nodeCount);
        var held = new bool[branches.Length];
        var reactive = new bool[nodeCount];
        var slots = new int[branches.Length];
        for (var n = 0; n < branches.Length; n++)
        {
            var b = branches[n];
            held[n] = b.Kind == BranchKind.Junction || (b.Kind == BranchKind.Lamp && !isDirect);
            slots[n] = held[n] ? -1 : mesh.Edge(b.A, b.B);
            if (!isDirect && b.IsReactive)
                reactive[b.A] = reactive[b.B] = true;
        }
        var real = new List<int>();
        mesh.Eliminate(n => !kept.Contains(n) && !reactive[n], real, places: null);
        var alive = mesh.Alive();
        var complex = new List<int>();
        var left = mesh.Left();
        var places = new int[nodeCount];
        Array.Fill(places, -1);
        for (var n = 0; n < left.Count; n++)
            places[left[n]] = n;
        mesh.Eliminate(n => !kept.Contains(n), complex, places);
        var parts = PartsOf(nodeCount, branches, drive, ground);
        var rows = RowsOf(nodeCount, kept, parts, drive, ground, out var unknowns);
        return new Elimination
        {
            Slots = mesh.Slots,
            BranchSlots = [.. slots],
            RealSteps = [.. real],
            ComplexSteps = [.. complex],
            AliveSlots = [.. alive],
            CouplingPlaces = places,
            Couplings = left.Count,
            Rows = rows,
            Unknowns = unknowns,
            Remaining = [.. mesh.Edges().Select(e => (e.Slot, rows[e.A], rows[e.B]))],
            Parts = parts,
        };
    }

    private static int[] PartsOf(int nodeCount, ImmutableArray<Branch> branches, int drive, int ground)
    {
        var parts = Enumerable.Range(0, nodeCount).ToArray();
        int Root(int n)
        {
            while (parts[n] != n)
                n = parts[n] = parts[parts[n]];
            return n;
        }
        foreach (var b in branches)
            parts[Root(b.A)] = Root(b.B);
        // What feeds the circuit joins it as well: between its two sides a meter shows its volts though no current flows.
        parts[Root(drive)] = Root(ground);
        for (var n = 0; n < nodeCount; n++)
            parts[n] = Root(n);
        return parts;
    }

    /// <summary>One node of each part is held at zero: of the source's part the ground, of any other its first kept node.</summary>
    private static int[] RowsOf(int nodeCount, HashSet<int> kept, int[] parts, int drive, int ground, out int unknowns)
    {
        var rows = new int[nodeCount];
        Array.Fill(rows, Eliminated);
        var grounded = new HashSet<int> { parts[ground] };
        unknowns = 0;
        foreach (var n in kept.Order())
            if (n == ground)
                rows[n] = GroundRow;
            else if (n == drive)
                rows[n] = DriveRow;
            else
                rows[n] = grounded.Add(parts[n]) && parts[n] != parts[drive] ? GroundRow : unknowns++;
        return rows;
    }
}
