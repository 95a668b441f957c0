namespace Ohmstead.Electrical.TypeSheets;

/// <summary>Unit files: how one unit differs from its sheet.</summary>
public static class UnitFile
{
    /// <summary>The mark of the format.</summary>
    public const string Mark = "unit/1";

    /// <summary>Reads a unit file and gives the sheet of this very unit: circuit changed, chances of new parts lowered.</summary>
    public static Parsed<TypeSheet> Read(string text, TypeSheet sheet)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        TypeSheetFile.CheckMark(root, Mark);
        if (root.Word("sheet") is var id && id.Length > 0 && id != sheet.Id)
            root.Report("sheet", $"is \"{id}\"", $"this unit is of another sheet than \"{sheet.Id}\"");
        // Each is read when those before it are in: what is wrong is told in the order of the file.
        var changes = root.List("changes")
            .Where(c => c.IsObject())
            .Select(Change)
            .OfType<UnitChange>()
            .Concat(root.List("renewed").Select(r => new PartRenewed(r.Path, r.AsWord())))
            .Concat(root.List("rewired").Select(r => new PartRewired(r.Path, r.AsWord())));
        return UnitSheet.Of(sheet, changes, problems);
    }

    private static UnitChange? Change(JsonCursor change)
    {
        if (change.Has("replace"))
            return PartFile.Read(change.At("replace")) is { } part ? new PartReplaced(change.Path, part) : null;
        if (change.Has("remove"))
            return new PartRemoved(change.Path, change.Word("remove"));
        if (change.Has("add"))
            return PartFile.Read(change.At("add")) is { } part ? new PartAdded(change.Path, part) : null;
        if (change.Has("move"))
            return new EndMoved(change.Path, change.Word("move"), change.Word("to"));
        change.Report("is no change", "replace, remove, add or move is expected");
        return null;
    }
}
