namespace Ohmstead.Workshop.Journal;

/// <summary>The photos and recordings that a journal speaks of.</summary>
public static class PhotoNames
{
    /// <summary>Every hash once, in the order of the journal; corrected entries count too.</summary>
    public static IReadOnlyList<string> In(IEnumerable<Fact> facts) => [.. facts.SelectMany(Of).Where(PhotoHash.IsOne).Distinct()];

    private static IEnumerable<string> Of(Fact? fact) =>
        fact switch
        {
            PhotoAdded p => [p.Photo],
            ConditionNoted c => [c.Photo],
            DamagePinned d => [d.Photo],
            HumRecorded h => [h.Recording, h.Wav],
            Corrected c => Of(c.Instead),
            _ => [],
        };
}
