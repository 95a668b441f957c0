using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Perf.Experiments.Benches;

namespace Ohmstead.Perf.Experiments.Doubted;

/// <summary>A kind of bench on which the diagnosis is tried.</summary>
/// <param name="Name">Its name on the command line.</param>
/// <param name="Title">Its name in the table.</param>
/// <param name="Right">The doubts that name what is wrong with it; none where nothing is wrong but the unit.</param>
internal sealed record DoubtCondition(string Name, string Title, Bench Bench, ImmutableArray<DoubtAbout> Right)
{
    /// <summary>Twelve readings are taken in the proposed order, not all at once.</summary>
    public bool IsWalk { get; init; }

    /// <summary>The leads of the bench that has them [Ω].</summary>
    public const double LeadOhms = 0.3;

    private const double SlipShare = 0.08;

    /// <summary>All conditions, in the table's order.</summary>
    public static ImmutableArray<DoubtCondition> All { get; } =
    [
        new("matching", "as the sheet says", Bench.AsNoted, []),
        new("spread", "twice the spread", new Bench { SpreadTimes = 2 }, []),
        new(
            "batch",
            "another batch",
            new Bench { TrueType = OtherTypes.AnotherBatch },
            [DoubtAbout.Unit, DoubtAbout.Kind, DoubtAbout.Internal]
        ),
        new("meter", "meter three times worse", new Bench { MeterTimes = 3 }, [DoubtAbout.Meter, DoubtAbout.Unit]),
        new("leads", "leads of 0.3 Ω left in", new Bench { LeadOhms = LeadOhms }, [DoubtAbout.Leads]),
        new("slips", "8 % of the readings slipped", new Bench { SlipShare = SlipShare }, []),
        new("line", "line noted 4 V off", new Bench { LineOffVolts = 4 }, [DoubtAbout.Line]),
        new("unlisted", "a fault in no list", new Bench { HasUnlisted = true }, []),
        new("sibling", "a sibling's sheet", new Bench { TrueType = OtherTypes.Sibling }, [DoubtAbout.Kind, DoubtAbout.Unit]),
        new("cold", "before the mains, 20 % slipped", new Bench { SlipShare = 0.2, IsCold = true }, []),
        new("twelve", "twelve proposed readings, 8 % slipped", new Bench { SlipShare = SlipShare }, []) { IsWalk = true },
    ];
}
