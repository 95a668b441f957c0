using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Wiring;

/// <summary>Where the two leads of a reading go on the unit's own photos: where its wiring record pinned these terminals.</summary>
public sealed record LeadPins(ImmutableArray<LeadPhoto> Photos)
{
    /// <summary>On no photo.</summary>
    public static LeadPins None { get; } = new([]);

    /// <summary>The photos on which a terminal of the reading was pinned; of a terminal pinned several times, the last.</summary>
    public static LeadPins Of(BenchUnit unit, ReadingSpec reading)
    {
        var seen = unit.All<JointSeen>().Select(j => j.Fact).Where(j => j.Photo.Length > 0).ToList();
        var pins = new[] { (Terminal: reading.From, IsRed: true), (Terminal: reading.To, IsRed: false) }
            .Where(lead => lead.Terminal.Length > 0)
            .Select(lead => (lead.IsRed, Joint: seen.LastOrDefault(j => j.Terminal == lead.Terminal)))
            .Where(lead => lead.Joint is not null);
        return new([
            .. pins.GroupBy(p => p.Joint!.Photo, StringComparer.Ordinal)
                .Select(g => new LeadPhoto(g.Key, [.. g.Select(p => new LeadPin(p.IsRed, p.Joint!.X, p.Joint.Y))])),
        ]);
    }
}

/// <summary>A photo with the places of one lead or both.</summary>
/// <param name="Photo">Hash of the photo.</param>
public sealed record LeadPhoto(string Photo, ImmutableArray<LeadPin> Pins);

/// <summary>Where a lead goes.</summary>
/// <param name="X">Place across [0..1].</param>
/// <param name="Y">Place down [0..1].</param>
public sealed record LeadPin(bool IsRed, double X, double Y);
