using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Wiring;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Untyped;

/// <summary>
/// The type of a unit has become known: which terminal, step and wire of its sheet each of those is that were named on the way,
/// and from these which reading each reading is.
/// </summary>
public static class CarryOver
{
    private const string Blade1 = "blade-1";
    private const string Blade2 = "blade-2";
    private const string Case = "case";

    /// <summary>True when something was recorded before the type was known, and nothing was carried over to this type yet.</summary>
    public static bool IsOpen(BenchUnit unit) =>
        !unit.All<CarriedOver>().Any(c => c.Fact.SheetId == unit.Card.SheetId)
        && unit.Standing.Any(e =>
            e.Fact switch
            {
                ReadingEntered r => UntypedIds.IsOwn(r.ReadingId),
                ReadingWaived w => UntypedIds.IsOwn(w.ReadingId),
                JointSeen j => UntypedIds.IsOwn(j.Terminal),
                TakenOff o => UntypedIds.IsOwn(o.Step),
                _ => false,
            }
        );

    /// <summary>The unit as it was recorded, with nothing carried over.</summary>
    public static BenchUnit Plain(BenchUnit unit)
    {
        var plain = UnitHistory.Fold([.. unit.Journal.Where(e => e.Fact is not CarriedOver)]);
        return plain with { Card = plain.Card with { SheetId = "" } };
    }

    /// <summary>What has to be chosen: terminals, then wires with both ends seen, then steps, each with a proposal.</summary>
    /// <param name="unit">With nothing carried over (<see cref="Plain"/>).</param>
    public static ImmutableArray<CarryChoice> Choices(BenchUnit unit, TypeSheet sheet)
    {
        var own = UntypedSheet.Of(unit);
        var terminals = Named(sheet, TerminalsOf(sheet), PartNames.Terminal);
        var (blade1, blade2) = BladesOf(sheet);
        var named = UntypedSheet.Terminals(unit);
        var choices = ImmutableArray.CreateBuilder<CarryChoice>();
        choices.Add(new(Blade1, "One plug blade", terminals, blade1));
        choices.Add(new(Blade2, "The other plug blade", terminals, blade2));
        choices.Add(new(Case, "The case, or the core", terminals, Alike(terminals, ["case", "core", "iron"])));
        foreach (var t in named)
            choices.Add(new(t.Id, Sentences.Large(PartNames.Terminal(own, t.Id)), terminals, Alike(terminals, [t.Name, $"post {t.Name}"])));
        var wires = Named(sheet, sheet.Elements.Where(e => e.Kind == ElementKind.Wire).Select(e => e.Id), PartNames.Of);
        foreach (var wire in SeenWire.All(unit))
            choices.Add(new(wire.Id, $"{Sentences.Large(wire.Name)} from {PartNames.Terminal(own, wire.From)}", wires, ""));
        var steps = Named(sheet, sheet.TakeApart.Select(s => s.Id), PartNames.Step);
        foreach (var step in own.TakeApart.Where(s => UntypedIds.IsOwn(s.Id)))
            choices.Add(new(step.Id, $"Off: {step.Title}", steps, Alike(steps, [step.Title])));
        return choices.ToImmutable();
    }

    /// <summary>The fact that carries all of it over.</summary>
    /// <param name="chosen">By the id without a type: the sheet's id; empty or left out for none.</param>
    public static CarriedOver Make(BenchUnit unit, TypeSheet sheet, IReadOnlyDictionary<string, string> chosen)
    {
        var names = chosen.Where(c => c.Value.Length > 0 && c.Key is not (Blade1 or Blade2 or Case)).ToDictionary(StringComparer.Ordinal);
        foreach (var (own, theirs) in Readings(unit, sheet, chosen))
            if (theirs is not null)
                names[own.Id] = theirs.Id;
        foreach (var wire in SeenWire.All(unit))
        {
            if (!names.Remove(wire.Id, out var element) || sheet.Elements.FirstOrDefault(e => e.Id == element) is not { } put)
                continue;
            var isTurned = chosen.GetValueOrDefault(wire.From) == put.To || chosen.GetValueOrDefault(wire.To) == put.From;
            (names[wire.First], names[wire.Second]) = isTurned
                ? ($"{element}.to", $"{element}.from")
                : ($"{element}.from", $"{element}.to");
        }
        foreach (var (part, theirs) in Parts(sheet, chosen))
            names[part] = theirs;
        return new CarriedOver(sheet.Id, names.ToImmutableSortedDictionary(StringComparer.Ordinal));
    }

    /// <summary>Each reading that was taken without a type, and the sheet's reading of the same points; null where it has none.</summary>
    public static ImmutableArray<(ReadingSpec Own, ReadingSpec? Theirs)> Readings(
        BenchUnit unit,
        TypeSheet sheet,
        IReadOnlyDictionary<string, string> chosen
    )
    {
        var taken = unit.All<ReadingEntered>()
            .Select(r => r.Fact.ReadingId)
            .Concat(unit.All<ReadingWaived>().Select(w => w.Fact.ReadingId))
            .ToHashSet(StringComparer.Ordinal);
        return
        [
            .. UntypedSheet
                .Of(unit)
                .Readings.Where(r => taken.Contains(r.Id))
                .Select(r => (r, sheet.Readings.FirstOrDefault(s => IsSame(r, s, chosen)))),
        ];
    }

    /// <summary>The same quantity, unfed, between the same two places: a group that is tied together is one place.</summary>
    private static bool IsSame(ReadingSpec own, ReadingSpec theirs, IReadOnlyDictionary<string, string> chosen)
    {
        if (own.Quantity != theirs.Quantity || theirs.State.Source is not null || !theirs.State.Lifted.IsEmpty)
            return false;
        var (a, b) = (Mapped(own, own.From, chosen), Mapped(own, own.To, chosen));
        var (c, d) = (Group(theirs, theirs.From), Group(theirs, theirs.To));
        return (a.SetEquals(c) && b.SetEquals(d)) || (a.SetEquals(d) && b.SetEquals(c));
    }

    private static HashSet<string> Mapped(ReadingSpec own, string terminal, IReadOnlyDictionary<string, string> chosen) =>
        Group(own, terminal).Select(t => chosen.GetValueOrDefault(t, "")).Where(t => t.Length > 0).ToHashSet(StringComparer.Ordinal);

    private static HashSet<string> Group(ReadingSpec spec, string terminal) =>
        spec
            .State.Joined.Where(g => g.Contains(terminal, StringComparer.Ordinal))
            .SelectMany(g => g)
            .Append(terminal)
            .ToHashSet(StringComparer.Ordinal);

    /// <summary>The cord's wires by the blades they sit on, and the primary.</summary>
    private static IEnumerable<(string Part, string Theirs)> Parts(TypeSheet sheet, IReadOnlyDictionary<string, string> chosen)
    {
        foreach (var (blade, n) in (((string, string)[])[(Blade1, "1"), (Blade2, "2")]))
            if (
                chosen.GetValueOrDefault(blade) is { Length: > 0 } at
                && sheet.Elements.FirstOrDefault(e => e.Kind == ElementKind.Wire && (e.From == at || e.To == at)) is { } cord
            )
                yield return ($"{UntypedIds.Prefix}cord-{n}", cord.Id);
        if (sheet.Cores.FirstOrDefault() is { } core)
            yield return (UntypedIds.Prefix + "primary", core.ReferenceWinding);
    }

    private static (string First, string Second) BladesOf(TypeSheet sheet) =>
        sheet.Readings.Select(r => r.State.Source).FirstOrDefault(s => s is { IsDirect: false } && s.Volts == sheet.SupplyVolts)
            is { } mains
            ? (mains.From, mains.To)
            : ("", "");

    private static IEnumerable<string> TerminalsOf(TypeSheet sheet) =>
        WireEnds
            .Terminals(sheet)
            .Concat(sheet.Readings.SelectMany(r => new[] { r.From, r.To }))
            .Where(t => t.Length > 0)
            .Distinct(StringComparer.Ordinal);

    private static ImmutableArray<(string Id, string Words)> Named(
        TypeSheet sheet,
        IEnumerable<string> ids,
        Func<TypeSheet, string, string> name
    ) => [.. ids.Select(id => (id, name(sheet, id)))];

    private static string Alike(ImmutableArray<(string Id, string Words)> among, ReadOnlySpan<string> words)
    {
        foreach (var word in words)
        foreach (var (id, said) in among)
            if (
                string.Equals(said, word, StringComparison.OrdinalIgnoreCase)
                || string.Equals(said, $"the {word}", StringComparison.OrdinalIgnoreCase)
            )
                return id;
        return "";
    }
}

/// <summary>Something that was named on the way, and what of the type sheet it may be.</summary>
/// <param name="From">Its id without a type.</param>
/// <param name="Words">What it is.</param>
/// <param name="To">What it may be.</param>
/// <param name="Proposed">What it most likely is; empty for none.</param>
public sealed record CarryChoice(string From, string Words, ImmutableArray<(string Id, string Words)> To, string Proposed);
