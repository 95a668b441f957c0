using CsCheck;

namespace Ohmstead.Electrical.Tests;

/// <summary>
/// Samples of a CsCheck generator from a fixed seed, one after the other, so that a run today is the run of tomorrow. (CsCheck
/// itself takes a new seed each time and shrinks what fails; for that, hand the generator to its own Sample.)
/// </summary>
internal static class Drawn
{
    public static void Samples<T>(this Gen<T> gen, int count, Func<T, bool> holds, uint seed = 1)
    {
        for (var n = 0; n < count; n++)
        {
            var one = gen.Generate(new PCG(seed, (ulong)n), null, out _);
            try
            {
                Assert.True(holds(one), "does not hold");
            }
            catch (Exception e)
            {
                throw new InvalidOperationException(FormattableString.Invariant($"sample {n} of seed {seed}: {one}\n{e.Message}"), e);
            }
        }
    }
}
