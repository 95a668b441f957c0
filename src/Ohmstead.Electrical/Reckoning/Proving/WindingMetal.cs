namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary>The metal of a winding, whose ohms say how warm it is: R ∝ k + t (key iec-61558).</summary>
/// <param name="Word">In a file.</param>
/// <param name="K">k: 234.5 for copper, 225 for aluminum.</param>
public sealed record WindingMetal(string Word, double K)
{
    /// <summary>Copper.</summary>
    public static WindingMetal Copper { get; } = new("copper", 234.5);

    /// <summary>Aluminum.</summary>
    public static WindingMetal Aluminium { get; } = new("aluminium", 225);

    /// <summary>Reads the field <c>metal</c>; copper where it is left out.</summary>
    internal static WindingMetal Read(QuestionFields fields) =>
        fields.OneOf("metal", [Copper.Word, Aluminium.Word], Copper.Word) == Aluminium.Word ? Aluminium : Copper;

    /// <summary>How warm a winding is that has so many ohms [°C].</summary>
    public double CelsiusOf(double ohms, ColdWinding cold) => (ohms / cold.Ohms * (K + cold.Celsius)) - K;
}

/// <summary>A winding before the test, as warm as the room.</summary>
/// <param name="Ohms">Above 0.</param>
/// <param name="Celsius">Of winding and room.</param>
public sealed record ColdWinding(double Ohms, double Celsius)
{
    /// <summary>Reads the part <c>cold</c>.</summary>
    internal static ColdWinding Read(QuestionFields fields) =>
        fields.NeededPart("cold", "{ \"ohms\": …, \"celsius\": … }") is { } cold
            ? new(cold.Number("ohms", NumberRange.Positive), cold.Number("celsius", NumberRange.Celsius))
            : new(1, 20);
}
