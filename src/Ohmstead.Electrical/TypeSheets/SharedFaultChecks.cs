using System.Globalization;

namespace Ohmstead.Electrical.TypeSheets;

/// <summary>What must hold between the faults that parts share and those parts.</summary>
internal static class SharedFaultChecks
{
    public static void Run(JsonCursor root, TypeSheet sheet)
    {
        var taken = sheet.PartIds.ToHashSet(StringComparer.Ordinal);
        for (var n = 0; n < sheet.SharedFaults.Length; n++)
        {
            var (fault, at) = (sheet.SharedFaults[n], string.Create(CultureInfo.InvariantCulture, $"sharedFaults[{n}]"));
            if (!taken.Add(fault.Id))
                root.Report($"{at}.id", $"\"{fault.Id}\" is used twice", "a shared fault needs an id that no part and no other has");
            if (fault.Id.AsSpan().ContainsAny(":~=>"))
                root.Report(
                    $"{at}.id",
                    $"\"{fault.Id}\" has one of : ~ = > in it",
                    "these stand between names in faults; choose another name"
                );
            Parts(root, sheet, fault, at);
        }
    }

    private static void Parts(JsonCursor root, TypeSheet sheet, SharedFault fault, string at)
    {
        foreach (var id in fault.Elements.Where(id => sheet.KindOf(id) is null).Distinct(StringComparer.Ordinal))
            root.Report($"{at}.elements", $"\"{id}\" is no element", "name elements or sliders of the sheet");
        if (fault.Elements.GroupBy(e => e, StringComparer.Ordinal).FirstOrDefault(g => g.Count() > 1) is { } twice)
            root.Report($"{at}.elements", $"names \"{twice.Key}\" twice", "name each part once");
        if (fault.Elements.Select(sheet.KindOf).OfType<ElementKind>().Distinct().ToList() is not [var kind, .. var others])
            return;
        if (others.Count > 0)
            root.Report($"{at}.elements", $"names a {kind.Word()} and a {others[0].Word()}", "parts of one kind are expected");
        else if (!kind.Faults().Any(m => m.Mode == fault.Mode))
            root.Report(
                $"{at}.mode",
                $"\"{fault.Mode}\" is no fault mode of a {kind.Word()}",
                "one of " + string.Join(", ", kind.Faults().Select(m => m.Mode))
            );
    }
}
