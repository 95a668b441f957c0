namespace Ohmstead.Electrical.Planning;

/// <summary>How often a rewire goes wrong in each way [%]; common practice, no source.</summary>
/// <param name="SwapPercent">Two ends exchanged; shared over all of them.</param>
/// <param name="MovedPercent">An end on a neighbour's terminal; shared.</param>
/// <param name="BridgePercent">Solder or a whisker between neighbours; shared.</param>
/// <param name="OffPercent">Each wire left off.</param>
/// <param name="ReversedPercent">Each winding or rectifier turned round.</param>
/// <param name="BypassedPercent">Each breaker bypassed.</param>
/// <param name="ColdPercent">Each joint or wire cold.</param>
public sealed record RewireChances(
    double SwapPercent,
    double MovedPercent,
    double BridgePercent,
    double OffPercent,
    double ReversedPercent,
    double BypassedPercent,
    double ColdPercent
)
{
    /// <summary>What a shop starts with.</summary>
    public static RewireChances Usual { get; } = new(10, 8, 5, 2, 8, 1, 3);
}
