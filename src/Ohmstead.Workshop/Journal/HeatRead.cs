using System.Text.Json.Serialization;

namespace Ohmstead.Workshop.Journal;

/// <summary>A reading in a heat run: unplugged for it, and plugged in again.</summary>
/// <param name="Minutes">From first switching on to this switching off, by the clock [min].</param>
/// <param name="SecondsAfter">From switching off to the reading [s].</param>
/// <param name="Ohms">Of the winding [Ω].</param>
/// <param name="RoomCelsius">Of the room [°C].</param>
public sealed record HeatRead(double Minutes, double SecondsAfter, double Ohms, double RoomCelsius) : Fact
{
    /// <summary>True for the last one: the plug stays out, and what is read after it is read of a unit that cools.</summary>
    [JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingDefault)]
    public bool StaysOut { get; init; }
}
