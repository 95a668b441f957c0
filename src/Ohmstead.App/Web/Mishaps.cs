using Ohmstead.Storage;

namespace Ohmstead.App.Web;

/// <summary>What went wrong in one window, in words, until it is put right or put away.</summary>
/// <param name="log">Where the whole of it is written: the window that the tool was started from.</param>
public sealed class Mishaps(ILogger log)
{
    private static readonly Action<ILogger, Exception> Log = LoggerMessage.Define(
        LogLevel.Error,
        new EventId(1, "Mishap"),
        "Something went wrong in a window."
    );

    private Action? told;

    /// <summary>Another mishap, or none any more.</summary>
    public event Action? Changed;

    /// <summary>The last one; null when there is none to tell.</summary>
    public Mishap? Now { get; private set; }

    /// <summary>Tells what broke while a press was answered.</summary>
    /// <param name="isKept">True when the entry itself was on the disk by then.</param>
    public void Say(Exception broken, bool isKept)
    {
        // That a device may only look is no fault of the tool.
        if (broken is not NotAllowed)
            Log(log, broken);
        told = null;
        Now =
            broken is StoreUnusable { IsUnsure: true }
                ? new Mishap(
                    "It may not be saved.",
                    $"{Why(broken)} What you typed is still in its box. When it answers again, look in the log. If it is not there, save it again."
                )
                {
                    IsUnsure = true,
                }
            : isKept
                ? new Mishap("Saved, but something went wrong afterwards.", $"{Why(broken)} Load the page again to see what was saved.")
            : new Mishap("Not saved.", $"{Why(broken)} What you typed is still in its box. Put this right, then save it again.");
        Changed?.Invoke();
    }

    /// <summary>Tells that what may not have been saved was.</summary>
    /// <param name="read">Called when the person has read it.</param>
    public void SaySaved(Action read)
    {
        (Now, told) = (new Mishap("It was saved all the same.", "You need not save it again."), read);
        Changed?.Invoke();
    }

    /// <summary>Writes what broke where only the window that the tool was started from shows it.</summary>
    public static void Note(ILogger log, Exception broken) => Log(log, broken);

    /// <summary>It was read, or an entry was kept since.</summary>
    public void Clear()
    {
        if (Now is null)
            return;
        told?.Invoke();
        (Now, told) = (null, null);
        Changed?.Invoke();
    }

    /// <summary>Why, in a sentence.</summary>
    public static string Why(Exception broken) =>
        broken is NotAllowed refused ? refused.Message
        : broken is StoreUnusable unusable ? Sentence(unusable.Message)
        : BrokenDisk.Words(broken) is { } words ? Sentence(words)
        : $"There is an error in Ohmstead ({broken.GetType().Name}). The window it was started from says more.";

    private static string Sentence(string words) => words.Length == 0 ? "" : $"{char.ToUpperInvariant(words[0])}{words[1..].TrimEnd('.')}.";
}

/// <summary>Something that went wrong, as a person is told.</summary>
public sealed record Mishap(string Title, string Words)
{
    /// <summary>True while nobody knows whether it was saved.</summary>
    public bool IsUnsure { get; init; }
}
