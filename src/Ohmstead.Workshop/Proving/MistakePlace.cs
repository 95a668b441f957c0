using System.Collections.Immutable;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Findings;

namespace Ohmstead.Workshop.Proving;

/// <summary>Where a wiring mistake lies: the parts and the terminals to look at, and what to do there.</summary>
/// <param name="Elements">The parts whose ends are wrong; for a solder bridge the part beside it.</param>
/// <param name="Terminals">Where to look, in the order in which they are said.</param>
public sealed record MistakePlace(ImmutableArray<string> Elements, ImmutableArray<string> Terminals, Remedy Remedy)
{
    /// <summary>Below this a mistake is not named [probability].</summary>
    private const double WorthNaming = 0.005;

    private const int MostNamed = 5;

    /// <summary>The mistakes that a check makes probable enough to look for, most probable first.</summary>
    public static ImmutableArray<RewireHypothesis> Probable(RewireResult result) =>
        [.. result.Probable.Where(h => !h.Mistakes.IsEmpty && h.Probability >= WorthNaming).Take(MostNamed)];

    /// <summary>Of one mistake.</summary>
    public static MistakePlace Of(Mistake mistake, TypeSheet sheet)
    {
        var at = mistake.Id.IndexOf(':', StringComparison.Ordinal);
        var (sort, what) = (mistake.Id[..at], mistake.Id[(at + 1)..]);
        var row = WhatToDo.ForMistake(sort);
        Element Part(string id) => sheet.Elements.First(e => e.Id == id);
        ImmutableArray<string> BothEnds(string id) => [Part(id).From, Part(id).To];
        string Owner(string end) => end[..end.LastIndexOf('.')];
        switch (sort)
        {
            case "swap":
                ImmutableArray<string> parts = [.. what.Split('~').Select(Owner)];
                return new(parts, [.. parts.SelectMany(p => BothEnds(p).AsEnumerable()).Distinct(StringComparer.Ordinal)], row);
            case "moved":
                var (end, terminal) = (what.Split('>')[0], what.Split('>')[1]);
                return new([Owner(end)], [terminal, .. BothEnds(Owner(end)).Where(t => t != terminal)], row);
            case "bridge":
                ImmutableArray<string> joined = [.. what.Split('~')];
                // A bridge is no part of the sheet: the one beside it stands for the place.
                var beside = sheet.Elements.First(e =>
                    e.Kind != ElementKind.Insulation && (joined.Contains(e.From) || joined.Contains(e.To))
                );
                return new([beside.Id], joined, row);
            default:
                return new([what], BothEnds(what), row);
        }
    }
}
