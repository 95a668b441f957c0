using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>Units that hang together through pairs, and the two sides they fall into.</summary>
/// <param name="Groups">How many groups no pair joins.</param>
/// <param name="IsClash">A ring of pairs contradicts itself.</param>
/// <param name="Turned">Those opposed to the first of their group.</param>
internal sealed record PhaseSides(int Groups, bool IsClash, ImmutableHashSet<string> Turned)
{
    public static PhaseSides Of(ImmutableArray<string> ids, ImmutableArray<(string A, string B, bool IsOpposed)> pairs)
    {
        var side = new Dictionary<string, bool>(StringComparer.Ordinal);
        var (groups, isClash) = (0, false);
        foreach (var first in ids.Where(id => !side.ContainsKey(id)))
        {
            groups++;
            side[first] = false;
            for (var next = new Queue<string>([first]); next.TryDequeue(out var at); )
            {
                foreach (var (a, b, isOpposed) in pairs.Where(p => p.A == at || p.B == at))
                {
                    var (other, wanted) = (a == at ? b : a, side[at] != isOpposed);
                    if (!side.TryGetValue(other, out var known))
                        next.Enqueue(other);
                    else if (known != wanted)
                        isClash = true;
                    side.TryAdd(other, wanted);
                }
            }
        }
        return new(groups, isClash, [.. side.Where(s => s.Value).Select(s => s.Key)]);
    }
}
