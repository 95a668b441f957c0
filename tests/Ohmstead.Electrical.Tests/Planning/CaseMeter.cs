using System.Collections.Immutable;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Planning;

/// <summary>The meter of the contract's cases.</summary>
internal static class CaseMeter
{
    public static Meter Meter { get; } =
        new(
            new Dictionary<Quantity, MeterError>
            {
                [Quantity.Ohms] = new(0.8, 0.05, 0, 0),
                [Quantity.InsulationOhms] = new(5, 20e3, 0, 0),
                [Quantity.AcVolts] = new(0.8, 0.03, 0, 0),
                [Quantity.DcVolts] = new(0.5, 0.02, 0, 0),
                [Quantity.AcAmps] = new(1.5, 0.01, 0, 0),
                [Quantity.Watts] = new(1.5, 0.4, 0, 0),
            }.ToImmutableDictionary()
        );
}
