using System.Collections.Immutable;

namespace Ohmstead.Workshop.Merging;

/// <summary>Every version of a document: the last by time counts, the others stay.</summary>
/// <param name="Versions">By time, of one time by text; each text once, at the last time that it was saved.</param>
public sealed record DocumentHistory(ImmutableArray<DocumentVersion> Versions)
{
    /// <summary>Versions in their order.</summary>
    public static DocumentHistory Of(IEnumerable<DocumentVersion> versions) =>
        new([
            .. versions
                .GroupBy(v => v.Text, StringComparer.Ordinal)
                .Select(g => new DocumentVersion(g.Max(v => v.At), g.Key))
                .OrderBy(v => v.At)
                .ThenBy(v => v.Text, StringComparer.Ordinal),
        ]);

    /// <summary>The one that counts.</summary>
    public DocumentVersion Newest => Versions[^1];

    /// <summary>Both histories.</summary>
    public DocumentHistory Merge(DocumentHistory other) => Of(Versions.Concat(other.Versions));

    /// <summary>
    /// What a store that keeps some versions in an order of its own adds, so that it holds all and the newest comes last. Numbers that
    /// were given to versions stay.
    /// </summary>
    /// <param name="kept">Its versions, the one that counts there last.</param>
    public ImmutableArray<DocumentVersion> Missing(IReadOnlyList<DocumentVersion> kept)
    {
        var all = Merge(Of(kept));
        var missing = all.Versions.Where(v => !kept.Any(k => k.Text == v.Text && k.At >= v.At)).ToList();
        if ((missing.Count > 0 ? missing[^1] : kept[^1]).Text != all.Newest.Text)
            missing.Add(all.Newest);
        return [.. missing];
    }
}

/// <summary>A version of a document.</summary>
public sealed record DocumentVersion(DateTimeOffset At, string Text);
