using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Planning;

/// <summary>A mistake that a rewire can make.</summary>
/// <param name="Id">As in the formats: <c>swap:A.to~B.to</c>, <c>moved:A.to&gt;TERMINAL</c>, <c>bridge:X~Y</c>, <c>off:A</c>,
/// <c>reversed:W</c>, <c>bypassed:B</c>, <c>cold:J</c>.</param>
/// <param name="Percent">Its chance in one rewire [%].</param>
/// <param name="Sizes">Sizes it is tried at [Ω]; a single 0 when it has none.</param>
public sealed record Mistake(string Id, double Percent, ImmutableArray<double> Sizes)
{
    /// <summary>Logarithm of its odds.</summary>
    internal double LogOdds => Math.Log(Percent / (100 - Percent));

    /// <summary>What a mistake puts in does not vary as a sound part does.</summary>
    private static readonly SpreadOverrides Exactly = new(ImmutableDictionary<string, double>.Empty.Add("ohms", 0));

    /// <summary>The circuit with this mistake in it.</summary>
    /// <param name="size">One of <see cref="Sizes"/>.</param>
    public TypeSheet Make(TypeSheet sheet, double size)
    {
        var (kind, what) = (Id[..Id.IndexOf(':', StringComparison.Ordinal)], Id[(Id.IndexOf(':', StringComparison.Ordinal) + 1)..]);
        return kind switch
        {
            "swap" => Swap(sheet, what.Split('~')),
            "moved" => Move(sheet, what.Split('>')),
            "bridge" => Bridge(sheet, what.Split('~'), size),
            "reversed" => Change(sheet, what, e => e with { From = e.To, To = e.From }),
            _ => Change(sheet, what, e => e is Resistive r ? r with { Ohms = size, Spread = Exactly } : e),
        };
    }

    private static TypeSheet Swap(TypeSheet sheet, string[] ends)
    {
        var (a, b) = (End(sheet, ends[0]), End(sheet, ends[1]));
        return Put(Put(sheet, ends[0], b), ends[1], a);
    }

    private static TypeSheet Move(TypeSheet sheet, string[] parts) => Put(sheet, parts[0], parts[1]);

    private static TypeSheet Bridge(TypeSheet sheet, string[] terminals, double ohms) =>
        sheet with
        {
            Elements = sheet.Elements.Add(
                new Resistive(
                    $"bridge-{terminals[0]}-{terminals[1]}",
                    ElementKind.Joint,
                    terminals[0],
                    terminals[1],
                    ohms,
                    Exactly,
                    ImmutableDictionary<string, double>.Empty
                )
            ),
        };

    private static TypeSheet Change(TypeSheet sheet, string id, Func<Element, Element> change)
    {
        var at = sheet.Elements.IndexOf(sheet.Elements.First(e => e.Id == id));
        return sheet with { Elements = sheet.Elements.SetItem(at, change(sheet.Elements[at])) };
    }

    private static string End(TypeSheet sheet, string end)
    {
        var e = sheet.Elements.First(e => e.Id == end[..end.LastIndexOf('.')]);
        return end.EndsWith(".to", StringComparison.Ordinal) ? e.To : e.From;
    }

    private static TypeSheet Put(TypeSheet sheet, string end, string terminal) =>
        Change(
            sheet,
            end[..end.LastIndexOf('.')],
            e => end.EndsWith(".to", StringComparison.Ordinal) ? e with { To = terminal } : e with { From = terminal }
        );
}
