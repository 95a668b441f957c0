namespace Ohmstead.Simulator;

/// <summary>Two posts that carry a voltage: how much, how it is set, and what stands in its way.</summary>
internal sealed record Output(
    string Post,
    string Common,
    int Secondary,
    double Volts,
    double LoadOhms,
    bool Direct = false,
    string? Throttle = null,
    (string Control, string On, string Off)? Selector = null,
    string? Liftable = null
);
