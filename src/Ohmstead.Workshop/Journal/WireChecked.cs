using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>A check of the wiring with an ohmmeter on the dead, open unit.</summary>
/// <param name="First">Terminals on the first lead.</param>
/// <param name="Second">Terminals on the second lead.</param>
/// <param name="Passes">True when it showed what the planned wiring shows.</param>
public sealed record WireChecked(ImmutableArray<string> First, ImmutableArray<string> Second, Shown Shown, bool Passes) : Fact;
