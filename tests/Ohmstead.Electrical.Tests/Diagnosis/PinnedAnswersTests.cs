using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Readings;

namespace Ohmstead.Electrical.Tests.Diagnosis;

/// <summary>
/// The answers to the twelve sample cases and to sixty drawn units, held to a millionth: on this machine, another, a busy one.
/// <c>./test pins</c> remakes them, when a better method is meant to move them.
/// </summary>
public class PinnedAnswersTests
{
    private const double Within = 1e-6;
    private const int Samples = 12;

    /// <summary>Of the drawn units, so many are looked at in every run.</summary>
    private const int Share = 4;

    private static readonly JsonObject[] Pins =
    [
        .. Reference.Json("tests/Ohmstead.Electrical.Tests/Diagnosis/PinnedAnswers.json")["answers"]!.AsArray().Select(a => a!.AsObject()),
    ];

    public static TheoryData<int> SampleCases => [.. Enumerable.Range(0, Samples)];

    public static TheoryData<int> DrawnShare =>
        [.. new Random(42).GetItems(Enumerable.Range(Samples, Pins.Length - Samples).ToArray(), Share).Distinct()];

    [Fact]
    public void Twelve_sample_cases_and_sixty_drawn_units_are_pinned()
    {
        Assert.Equal(Samples + 60, Pins.Select(p => (string)p["readings"]!).Distinct(StringComparer.Ordinal).Count());
        Assert.All(Pins[..Samples], p => Assert.Contains("/cases/", (string)p["readings"]!, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(SampleCases))]
    public void A_sample_case_is_answered_as_it_was(int pin) => Hold(Pins[pin], Environment.ProcessorCount);

    [Theory]
    [MemberData(nameof(DrawnShare))]
    public void A_drawn_unit_is_answered_as_it_was(int pin) => Hold(Pins[pin], Environment.ProcessorCount);

    [Fact]
    [Trait("kind", "long")]
    public void Every_drawn_unit_is_answered_as_it_was() => Assert.All(Pins[Samples..], p => Hold(p, 2));

    /// <summary>A busy loop on every core beside it: it takes longer, and says the same.</summary>
    [Fact]
    [Trait("kind", "long")]
    public void Beside_a_second_load_on_every_core_the_answers_are_the_same()
    {
        using var stop = new CancellationTokenSource();
        var load = Enumerable
            .Range(0, Environment.ProcessorCount)
            .Select(_ => new Thread(() =>
            {
                while (!stop.IsCancellationRequested)
                    Thread.SpinWait(1000);
            }))
            .ToArray();
        foreach (var t in load)
            t.Start();
        try
        {
            Assert.All(Pins[..Samples], p => Hold(p, 2));
            Assert.All(Pins[..Samples], p => Hold(p, 1));
        }
        finally
        {
            stop.Cancel();
            foreach (var t in load)
                t.Join();
        }
    }

    private static void Hold(JsonObject pin, int threads)
    {
        var sheet = Reference.Sheet((string)pin["sheet"]!);
        var taken = ReadingsFile.Read(Reference.Text((string)pin["readings"]!), sheet).Required;
        var result = Diagnoser.Run(new UnitModel(sheet), taken, new DiagnosisOptions { Threads = threads });
        Assert.True(result.Effort.IsFinished);
        Assert.Equal((double)pin["sound"]!, result.SoundProbability, Within);
        var pinned = pin["faults"]!.AsObject().ToDictionary(f => f.Key, f => (double)f.Value!, StringComparer.Ordinal);
        Assert.Equal(pinned.Count, result.Faults.Length);
        Assert.All(result.Faults, f => Assert.Equal(pinned[f.Mode.Name], f.Probability, Within));
        var next = result.Next.FirstOrDefault(n => n.BlockedBy.IsEmpty);
        Assert.Equal((string?)pin["next"], next?.Spec.Id);
        if (next is not null)
            Assert.Equal((double)pin["bits"]!, next.Bits, Within);
    }
}
