using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.LookOver;

namespace Ohmstead.Workshop.Tests.LookOver;

/// <summary>Owners' words against symptoms as sheets call them. From memory, no source.</summary>
public class SymptomsInWordsTests
{
    private static readonly Observation[] Symptoms =
    [
        .. new[]
        {
            "The train on track 1 slows with cars behind it",
            "The train on track 2 slows with cars behind it",
            "The whistle is dead on both tracks",
            "The whistle sounds on one track only",
            "It smells or is hot after an hour with nothing connected",
            "The pilot lamp is dark while the posts have volts",
            "The train is slow and growls on every step",
            "The ohms between the blades jump when the cord is flexed",
            "Inside, a turn of the winding is blue",
        }.Select((title, n) => new Observation(FormattableString.Invariant($"{n}"), title, [], 0.1)),
    ];

    [Theory]
    [InlineData("The trains slow down as soon as cars hang behind, and the whistle is weak.", "0 slow", "1 slow", "2 whistle", "6 slow")]
    [InlineData("Track 2 is slow.", "1 slow", "6 slow")]
    [InlineData("The whistle blows on one side only.", "2 whistle", "3 whistle")]
    [InlineData("It hummed last winter, then it smelled.", "4 smelled", "6 hummed")]
    [InlineData("The little lamp is out.", "5 lamp")]
    [InlineData("No hum, never hot, and it doesn’t smell.")]
    [InlineData("A yearly check.")]
    [InlineData("")]
    public void What_the_owner_says_ticks_what_it_speaks_of(string complaint, params string[] ticked) =>
        Assert.Equal(
            ticked,
            SymptomsInWords.Of(complaint, Symptoms).OrderBy(t => t.Key, StringComparer.Ordinal).Select(t => $"{t.Key} {t.Value}")
        );

    [Fact]
    public void Only_what_lies_inside_waits_for_the_cover() =>
        Assert.Equal(["8"], Symptoms.Where(SymptomsInWords.IsUnderCover).Select(s => s.Id));
}
