using System.Numerics;

namespace Ohmstead.Electrical.Planning;

/// <summary>A set of steps by their number, equal by content.</summary>
internal readonly struct StepSet : IEquatable<StepSet>
{
    private readonly ulong[] bits;

    private StepSet(ulong[] bits) => this.bits = bits;

    /// <summary>The empty set of a tree of so many steps.</summary>
    public static StepSet Empty(int steps) => new(new ulong[(steps + 63) / 64]);

    public bool Has(int step) => (bits[step >> 6] & (1UL << (step & 63))) != 0;

    public StepSet With(int step)
    {
        var copy = (ulong[])bits.Clone();
        copy[step >> 6] |= 1UL << (step & 63);
        return new(copy);
    }

    public StepSet With(StepSet other)
    {
        var copy = (ulong[])bits.Clone();
        for (var n = 0; n < copy.Length; n++)
            copy[n] |= other.bits[n];
        return new(copy);
    }

    /// <summary>An empty set of the same tree, to be filled with <see cref="Add"/>.</summary>
    public StepSet Emptied() => new(new ulong[bits.Length]);

    /// <summary>A copy, to be filled with <see cref="Add"/>.</summary>
    public StepSet Copied() => new((ulong[])bits.Clone());

    /// <summary>Adds to this very set: only for one that nobody else holds.</summary>
    public void Add(int step) => bits[step >> 6] |= 1UL << (step & 63);

    /// <summary>Takes out of this very set: only for one that nobody else holds.</summary>
    public void Remove(int step) => bits[step >> 6] &= ~(1UL << (step & 63));

    /// <summary>Joins to this very set: only for one that nobody else holds.</summary>
    public void Join(StepSet other)
    {
        for (var n = 0; n < bits.Length; n++)
            bits[n] |= other.bits[n];
    }

    public StepSet And(StepSet other)
    {
        var copy = (ulong[])bits.Clone();
        for (var n = 0; n < copy.Length; n++)
            copy[n] &= other.bits[n];
        return new(copy);
    }

    public bool Holds(StepSet other)
    {
        for (var n = 0; n < bits.Length; n++)
            if ((other.bits[n] & ~bits[n]) != 0)
                return false;
        return true;
    }

    /// <summary>The steps, rising.</summary>
    public IEnumerable<int> Steps()
    {
        for (var n = 0; n < bits.Length; n++)
        for (var rest = bits[n]; rest != 0; rest &= rest - 1)
            yield return (n << 6) + BitOperations.TrailingZeroCount(rest);
    }

    public bool Equals(StepSet other) => bits.AsSpan().SequenceEqual(other.bits);

    public override bool Equals(object? obj) => obj is StepSet other && Equals(other);

    public override int GetHashCode()
    {
        var hash = new HashCode();
        foreach (var word in bits)
            hash.Add(word);
        return hash.ToHashCode();
    }
}
