using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using static Ohmstead.Electrical.Tests.Diagnosis.Doubts.DoubtBench;

namespace Ohmstead.Electrical.Tests.Diagnosis.Doubts;

/// <summary>What is wrong with the sheet for a unit: a core that takes more than any sound one, another batch.</summary>
public class TwinUnitDoubtTests
{
    /// <summary>Half the loss resistance: as much again in the core as a sound one takes.</summary>
    [Fact]
    public void A_core_that_takes_more_than_any_sound_one_is_named_with_its_watts()
    {
        var values = Twin.Model.Nominal.Copy();
        foreach (var p in Twin.Model.Parameters.Where(p => p.Path.EndsWith("lossOhms", StringComparison.Ordinal)))
            values.Scale(p, 0.4);
        var taken = All(_ => true, (r, _) => Twin.Read(r, values));
        var doubt = Assert.Single(Run(taken).Doubts);
        Assert.Equal(DoubtAbout.Internal, doubt.About);
        var idle = Reference.Twin160.FindReading("watts-idle")!;
        Assert.Equal(Twin.Read(idle, values) - Twin.ReadListed("watts-idle"), doubt.Value, 1);
    }

    /// <summary>Four of the sheet's deviations at once in the loss of the core: about one sound unit in thirty thousand.</summary>
    [Fact]
    public void A_core_that_takes_half_as_much_again_is_doubted_before_it_is_called_sound()
    {
        var values = Twin.Model.Nominal.Copy();
        foreach (var p in Twin.Model.Parameters.Where(p => p.Path.EndsWith("lossOhms", StringComparison.Ordinal)))
            values.Scale(p, 0.68);
        var doubt = Assert.Single(Run(All(_ => true, (r, _) => Twin.Read(r, values))).Doubts);
        Assert.Equal(DoubtAbout.Internal, doubt.About);
        Assert.InRange(doubt.Probability, 0.5, 0.85);
    }

    [Fact]
    public void Windings_of_another_gauge_and_other_turns_are_another_batch()
    {
        var (values, dice) = (Twin.Model.Nominal.Copy(), new Random(2));
        foreach (var p in Twin.Model.Parameters)
        {
            values.Scale(p, Math.Exp(p.Sigma * MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, dice.NextDouble())));
            var isSecondary = Twin.Model.Sheet.Elements[p.Index] is Winding && !Twin.Model.ReferenceWindings.Contains(p.Index);
            if (p.Path.EndsWith(".lossOhms", StringComparison.Ordinal))
                values.Scale(p, 1 / 1.6);
            else if (isSecondary && p.Path.EndsWith(".ohms", StringComparison.Ordinal))
                values.Scale(p, 1.25);
            else if (isSecondary && p.Path.EndsWith(".turns", StringComparison.Ordinal))
                values.Scale(p, p.Index % 2 == 0 ? 1.015 : 1 / 1.015);
            else if (p.Path.EndsWith(".saturationAmps", StringComparison.Ordinal))
                values.Scale(p, Math.Exp(-1.5));
        }
        var doubt = Assert.Single(Run(All(_ => true, (r, _) => Twin.Read(r, values))).Doubts);
        Assert.Contains(doubt.About, new[] { DoubtAbout.Unit, DoubtAbout.Kind });
        Assert.Contains("main.lossOhms", doubt.Parameters.Select(p => "main." + p[(p.IndexOf('.', StringComparison.Ordinal) + 1)..]));
        Assert.True(doubt.Value > 2, FormattableString.Invariant($"{doubt.Value}"));
    }
}
