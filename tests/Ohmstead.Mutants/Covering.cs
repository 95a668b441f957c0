namespace Ohmstead.Mutants;

/// <summary>A class of tests that comes by a mistake.</summary>
/// <param name="Took">Processor time.</param>
/// <param name="IsSameAgain">True when it comes by it as often once it has run before: then it need not run in a fresh process.</param>
internal sealed record Covering(string Name, TimeSpan Took, bool IsSameAgain);
