namespace Ohmstead.App.Web;

/// <summary>One press of a person, through every component and store that it passes: whether anything of it was kept.</summary>
internal sealed class Press
{
    private static readonly AsyncLocal<Press?> Current = new();

    /// <summary>The press that is being answered on this way, or null.</summary>
    public static Press? Now => Current.Value;

    /// <summary>True when an entry of this press is on the disk.</summary>
    public bool IsKept { get; private set; }

    /// <summary>Begins one; it ends where the method that began it does.</summary>
    public static Press Begin() => Current.Value = new Press();

    /// <summary>An entry is on the disk.</summary>
    public static void Kept()
    {
        if (Now is { } press)
            press.IsKept = true;
    }
}
