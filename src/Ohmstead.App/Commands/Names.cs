namespace Ohmstead.App.Commands;

/// <summary>Help with a name that was not found.</summary>
internal static class Names
{
    private const int Most = 6;

    /// <summary>Those of the known names that begin most alike: <c>perhaps roller-1, roller-2</c>.</summary>
    public static string Like(string name, IEnumerable<string> known)
    {
        var all = known.Distinct(StringComparer.Ordinal).ToList();
        var near = all.OrderByDescending(k => Shared(k, name)).Take(Most).Where(k => Shared(k, name) > 1).ToList();
        return near.Count > 0
            ? $"perhaps {string.Join(", ", near)}"
            : $"the sheet has {string.Join(", ", all.Take(Most))}{(all.Count > Most ? " …" : "")}";
    }

    private static int Shared(string a, string b) =>
        a.Zip(b).TakeWhile(p => char.ToLowerInvariant(p.First) == char.ToLowerInvariant(p.Second)).Count();
}
