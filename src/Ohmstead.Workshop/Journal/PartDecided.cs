using System.Collections.Immutable;

namespace Ohmstead.Workshop.Journal;

/// <summary>What is to be done about a part was decided; of one part the last decision counts, until the part is changed.</summary>
/// <param name="About">Element, slider or part of the look-over.</param>
/// <param name="Mode">Fault mode that it is about; empty for none.</param>
/// <param name="Part">What is to be fitted, in words; empty for the same part, and where nothing is.</param>
/// <param name="Price">Of the parts, in the shop's money.</param>
/// <param name="Minutes">Of the work, where the person says so [min]; null for the usual.</param>
/// <param name="Why">The reason, in words; may be empty.</param>
/// <param name="Figures">Of a different part: its figures, as a type sheet names them; none for the same part.</param>
public sealed record PartDecided(
    string About,
    string Mode,
    DecidedAct Act,
    string Part,
    decimal Price,
    double? Minutes,
    string Why,
    ImmutableArray<PartFigure> Figures
) : Fact
{
    /// <inheritdoc/>
    public bool Equals(PartDecided? other) =>
        other is not null
        && (About, Mode, Act, Part, Price, Minutes, Why)
            == (other.About, other.Mode, other.Act, other.Part, other.Price, other.Minutes, other.Why)
        && Figures.SequenceEqual(other.Figures);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(About, Mode, Act, Part, Price);
}

/// <summary>A figure of a part, as a type sheet names it.</summary>
public sealed record PartFigure(string Name, double Value);

/// <summary>What was decided about a part.</summary>
public enum DecidedAct
{
    /// <summary>Nothing decided any more.</summary>
    Open,

    /// <summary>It stays as it is.</summary>
    Leave,

    /// <summary>It stays, and is looked at again at the next repair.</summary>
    Watch,

    /// <summary>It is cleaned.</summary>
    Clean,

    /// <summary>It is tightened, set or resoldered.</summary>
    Tighten,

    /// <summary>Another one comes into its place.</summary>
    Replace,
}
