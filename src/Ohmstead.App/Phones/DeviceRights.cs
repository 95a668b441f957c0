namespace Ohmstead.App.Phones;

/// <summary>What a code, and the device that came in by it, may do.</summary>
/// <param name="UnitId">The one unit that a phone sees; null for the whole bench.</param>
/// <param name="MayWork">False for a device that may only look.</param>
/// <param name="Life">How long it stays, from pairing on.</param>
internal sealed record DeviceRights(Guid? UnitId, bool MayWork, TimeSpan Life);
