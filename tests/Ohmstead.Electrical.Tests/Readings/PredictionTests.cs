using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Readings;

/// <summary>A prediction is made for the meter in hand: what averages shows other volts where a rectifier bends the wave.</summary>
public class PredictionTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Alternating_volts_are_those_of_the_meter(bool isAveraging)
    {
        var unit = new BenchUnit(Reference.Twin160) { HasAveragingMeter = isAveraging };
        var spec = Reference.Twin160.FindReading("left-second-ac")!;
        var predicted = Prediction.Run(unit.Model, [(spec, spec.State)], [], isAveraging)[0];
        var (own, other) = (
            unit.ReadListed(spec.Id),
            new BenchUnit(Reference.Twin160) { HasAveragingMeter = !isAveraging }.ReadListed(spec.Id)
        );
        Assert.Equal(own, predicted.Value, 1e-3);
        Assert.InRange(Math.Abs(own - other), 0.01, 10);
        Assert.InRange(predicted.Value, predicted.Low, predicted.High);
    }
}
