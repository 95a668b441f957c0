using System.Collections.Immutable;
using Ohmstead.Workshop.Dating;

namespace Ohmstead.Workshop.Merging;

/// <summary>Every version of a document: the last by time counts, the others stay. What dates a type is joined: what both say counts.</summary>
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

    /// <summary>As a bench has kept it, whatever its clock said.</summary>
    /// <param name="kind">Kind of the document.</param>
    /// <param name="kept">Its versions, the one that counts there last.</param>
    public static DocumentHistory Kept(string kind, IReadOnlyList<DocumentVersion> kept) =>
        IsJoined(kind) && kept.Count > 0 ? Of(kept) with { Joined = kept[^1] } : Of(kept);

    /// <summary>What was joined, or is the last at its bench, of a kind that is joined; null where the last by time counts.</summary>
    public DocumentVersion? Joined { get; init; }

    /// <summary>The one that counts.</summary>
    public DocumentVersion Counting => Joined ?? Versions[^1];

    /// <summary>Both histories.</summary>
    /// <param name="kind">Kind of the document.</param>
    public DocumentHistory Merge(string kind, DocumentHistory other) =>
        Of(Versions.Concat(other.Versions)) with
        {
            Joined = IsJoined(kind) ? Join(Counting, other.Counting) : null,
        };

    /// <summary>
    /// What a store that keeps some versions in an order of its own adds, so that it holds all and the one that counts comes last. Numbers
    /// that were given to versions stay.
    /// </summary>
    /// <param name="kind">Kind of the document.</param>
    /// <param name="kept">Its versions, the one that counts there last.</param>
    public ImmutableArray<DocumentVersion> Missing(string kind, IReadOnlyList<DocumentVersion> kept)
    {
        var all = kept.Count == 0 ? this : Merge(kind, Kept(kind, kept));
        var missing = all.Versions.Where(v => !kept.Any(k => k.Text == v.Text && k.At >= v.At)).ToList();
        if ((missing.Count > 0 ? missing[^1] : kept[^1]).Text != all.Counting.Text)
            missing.Add(all.Counting);
        return [.. missing];
    }

    private static bool IsJoined(string kind) => kind == KindDates.DocumentKind;

    /// <summary>What cannot be read, or is too much together, is not joined: then the later one counts, and the other stays beside it.</summary>
    private static DocumentVersion? Join(DocumentVersion one, DocumentVersion other)
    {
        var at = one.At > other.At ? one.At : other.At;
        if (one.Text == other.Text)
            return one with { At = at };
        return
            KindDates.Read(one.Text) is { } mine
            && KindDates.Read(other.Text) is { } theirs
            && KindDatesRead.Of(mine.Join(theirs)).Dates is { } both
            ? new(at, KindDates.Write(both))
            : null;
    }
}

/// <summary>A version of a document.</summary>
public sealed record DocumentVersion(DateTimeOffset At, string Text);
