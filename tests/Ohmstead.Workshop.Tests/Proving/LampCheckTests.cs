using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Tests.Readings;

namespace Ohmstead.Workshop.Tests.Proving;

/// <summary>The lamp check lets the line come up only where it passed and nothing doubts it, whether or not another reading waits for it.</summary>
public class LampCheckTests
{
    /// <summary>88 V is the least that the sample sheet asks for.</summary>
    [Theory]
    [InlineData(105, false, true)]
    [InlineData(60, false, false)]
    [InlineData(105, true, false)]
    public void It_passes_by_its_limits_and_undoubted(double volts, bool isDoubted, bool passes)
    {
        var bench = new OnTheBench().ColdGates().Read("lamp-60", volts);
        if (isDoubted)
            bench.Doubt(SlipKind.Unknown, ["lamp-60"]);
        var lamp = FirstPower.LampReading(OnTheBench.Sheet)!;
        Assert.Equal("lamp-60", lamp.Id);
        Assert.Equal(passes, FirstPower.LampPassed(lamp, [bench.Offer("lamp-60"), bench.Offer("left-full")], bench.Readings));
        Assert.Equal(passes, FirstPower.LampPassed(lamp, [bench.Offer("lamp-60")], bench.Readings));
    }

    [Fact]
    public void Not_taken_it_has_not_passed()
    {
        var bench = new OnTheBench().ColdGates();
        Assert.False(FirstPower.LampPassed(FirstPower.LampReading(OnTheBench.Sheet)!, [bench.Offer("lamp-60")], bench.Readings));
    }
}
