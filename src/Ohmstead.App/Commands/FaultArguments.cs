using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Planning;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Proving;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The faults given on the command line: exchanges of ends first, which give another sheet; then faults of elements.</summary>
internal static class FaultArguments
{
    /// <summary>The sheet with the exchanges done, and the faults to assume on it; every argument that is none is named.</summary>
    public static (UnitModel Model, ImmutableArray<AssumedFault> Faults) Read(TypeSheet sheet, string[] names)
    {
        var wrong = new List<string>();
        foreach (var name in names.Where(EndExchange.IsOne))
        {
            if (EndExchange.Apply(sheet, name, out var reason) is { } exchanged)
                sheet = exchanged;
            else
                wrong.Add($"--fault {name}: {reason}");
        }
        var model = new UnitModel(sheet);
        var faults = Assumed(new FaultCatalogue(model), sheet, names.Where(n => !EndExchange.IsOne(n)), wrong);
        return wrong.Count == 0 ? (model, faults) : throw new RefusedInput(wrong);
    }

    private static ImmutableArray<AssumedFault> Assumed(
        FaultCatalogue catalogue,
        TypeSheet sheet,
        IEnumerable<string> names,
        List<string> wrong
    )
    {
        var faults = ImmutableArray.CreateBuilder<AssumedFault>();
        foreach (var name in names)
        {
            if (!Fault.TryParse(name, catalogue, out var fault, out var hasSize, out var reason))
                wrong.Add($"--fault {name}: {Nearer(name, catalogue) ?? reason}");
            else if (hasSize && WrongSize(fault, sheet) is { } why)
                wrong.Add($"--fault {name}: {why}");
            else if (faults.Any(f => catalogue.Clash(f.Mode, fault.Mode)))
                wrong.Add($"--fault {name}: {fault.Mode.Element} has a fault already; give each part one fault");
            // A winding that is open without a turn is broken at its start.
            else
                faults.Add(
                    new AssumedFault(
                        fault.Mode,
                        hasSize ? fault.Size
                            : fault.Mode.Size == SizeKind.None ? 0
                            : null
                    )
                );
        }
        return faults.ToImmutable();
    }

    /// <summary>A fault of the command line in words: "worn roller, track 1 (0.8 Ω)".</summary>
    public static string Said(TypeSheet sheet, string name)
    {
        if (EndExchange.IsOne(name))
            return MistakeWords
                .Name(new Mistake($"swap:{name.Split(':')[0]}", 0, [0]), sheet)
                .Replace(" are swapped", " swapped", StringComparison.Ordinal);
        var parts = name.Split('=');
        var (part, mode) = (parts[0].Split(':')[0], parts[0].Split(':')[1]);
        var unit = mode switch
        {
            "shorted-turns" => "turns",
            "drifted" => "times its ohms",
            _ => "Ω",
        };
        var size =
            parts.Length < 2 ? ""
            : mode == "open" ? $" (at turn {parts[1]})"
            : $" ({parts[1]} {unit})";
        return PartNames.Fault(sheet, part, mode) + size;
    }

    /// <summary>What is wrong with a size that is a number, or null.</summary>
    private static string? WrongSize(Fault fault, TypeSheet sheet)
    {
        var turns = (sheet.Elements.FirstOrDefault(e => e.Id == fault.Mode.Parts[0]) as Winding)?.Turns ?? 0;
        var most = turns.ToString("G6", CultureInfo.InvariantCulture);
        return fault.Mode switch
        {
            { Spec.Does: FaultChange.BreaksAtTurn } => fault.Size <= turns ? null : $"there is no such turn; give a turn from 0 to {most}",
            { Size: SizeKind.WholeTurns } => fault.Size >= 1 && fault.Size < turns && fault.Size == Math.Floor(fault.Size)
                ? null
                : $"give whole turns, at least 1 and fewer than {most}",
            { Size: SizeKind.None } => "this fault has no size; leave the value out",
            _ => fault.Size > 0 ? null : "give a size above 0",
        };
    }

    /// <summary>For a name that is no fault: the modes of its element, or elements whose names begin alike.</summary>
    private static string? Nearer(string name, FaultCatalogue catalogue)
    {
        var parts = name.Split('=')[0].Split(':');
        if (parts.Length == 2 && catalogue.Find(string.Join(':', parts)) is not null)
            return null;
        var modes = catalogue.Modes.Where(m => m.Element == parts[0]).Select(m => m.Mode).ToList();
        if (modes.Count > 0)
            return $"{parts[0]} can be {string.Join(", ", modes)}; write {parts[0]}:{modes[0]}";
        return $"there is no part \"{parts[0]}\"; {Names.Like(parts[0], catalogue.Modes.Select(m => m.Element))}";
    }
}
