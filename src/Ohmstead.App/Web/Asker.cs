namespace Ohmstead.App.Web;

/// <summary>
/// A paired device that asks for something, on this way through the program. Where there is none it is this machine itself. It is said
/// once, where a request or a live connection comes in, and goes with all that comes of it.
/// </summary>
/// <param name="mark">The mark by which its entries are known: it is a bench of its own.</param>
/// <param name="name">What it is called.</param>
/// <param name="mayWork">Asked anew at every entry: what is shut out meanwhile enters nothing.</param>
internal sealed class Asker(string mark, string name, Func<bool> mayWork)
{
    private static readonly AsyncLocal<Asker?> Current = new();

    /// <summary>The device that asks now; null for this machine itself.</summary>
    public static Asker? Now => Current.Value;

    /// <summary>The mark of the device that asks now; empty for this machine itself.</summary>
    public static string NowMark => Now?.Mark ?? "";

    /// <summary>What this machine itself is called where it enters something: no device's name.</summary>
    public const string Here = "bench";

    /// <summary>What it is called where others are told who is there.</summary>
    public const string HereItself = "the bench itself";

    /// <summary>True for a name that a device cannot have.</summary>
    public static bool IsHere(string name) =>
        name.Trim() is var said
        && (
            string.Equals(said, Here, StringComparison.OrdinalIgnoreCase)
            || string.Equals(said, HereItself, StringComparison.OrdinalIgnoreCase)
        );

    /// <summary>The mark that its entries carry.</summary>
    public string Mark { get; } = mark;

    /// <summary>What it is called.</summary>
    public string Name { get; } = name;

    /// <summary>True while it may enter something.</summary>
    public bool MayWork => mayWork();

    /// <summary>From here on it is this one that asks.</summary>
    public static void Begin(Asker asker) => Current.Value = asker;

    /// <summary>Refuses what a device may not write.</summary>
    /// <exception cref="NotAllowed">The device may only look, or was shut out.</exception>
    public static void MustWork()
    {
        if (Now is { MayWork: false })
            throw new NotAllowed(
                "This device may only look. Whoever sits at the machine that Ohmstead runs on can let it work, under Devices."
            );
    }

    /// <summary>Refuses what is done at the machine itself alone.</summary>
    /// <exception cref="NotAllowed">A device asks.</exception>
    public static void MustBeHere()
    {
        if (Now is not null)
            throw new NotAllowed("This is done at the machine that Ohmstead runs on, not from a device.");
    }
}

/// <summary>A device asked for what it may not do; the message is for its person.</summary>
internal sealed class NotAllowed(string words) : Exception(words);
