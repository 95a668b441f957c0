namespace Ohmstead.Electrical.Circuits;

/// <summary>Two running sums of 64 bits over numbers in their order, mixed by odd constants and shifts: FNV's way, a word at a time.</summary>
internal struct WaveKey()
{
    private ulong one = 14695981039346656037,
        other = 0x9E3779B97F4A7C15;

    /// <summary>Takes in a word.</summary>
    public void Add(ulong word)
    {
        one = (one ^ word) * 1099511628211;
        one ^= one >> 32;
        other = (other + word) * 0xC2B2AE3D27D4EB4F;
        other ^= other >> 29;
    }

    /// <summary>Takes in numbers, each by its bits.</summary>
    public void Add(ReadOnlySpan<double> numbers)
    {
        foreach (var number in numbers)
            Add(BitConverter.DoubleToUInt64Bits(number));
    }

    /// <summary>Both sums.</summary>
    public readonly (ulong, ulong) Ends => (one, other);
}
