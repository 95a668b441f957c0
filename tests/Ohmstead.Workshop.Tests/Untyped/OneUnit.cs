using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Untyped;

/// <summary>A unit from facts.</summary>
internal static class OneUnit
{
    public static BenchUnit Of(params Fact[] facts) =>
        UnitHistory.Fold([
            .. facts.Select(
                (f, n) =>
                    new Entry(
                        new Guid(n + 1, 0, 0, new byte[8]),
                        new Guid(9, 0, 0, new byte[8]),
                        n + 1,
                        DateTimeOffset.UnixEpoch.AddMinutes(n),
                        "bench",
                        f
                    )
            ),
        ]);
}
