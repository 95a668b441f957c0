namespace Ohmstead.App.Web;

/// <summary>How the tool is served.</summary>
/// <param name="Port">Port on this machine; 0 for any free one.</param>
/// <param name="IsOnLan">True to listen on the local network too, for paired phones.</param>
/// <param name="IsDemo">True when the workshop is the invented one.</param>
internal sealed record SiteOptions(int Port, bool IsOnLan, bool IsDemo)
{
    /// <summary>Where the tool is found unless told otherwise; no known service uses it.</summary>
    public const int UsualPort = 18600;

    /// <summary>The bench from which this invented workshop was opened; null where there is none.</summary>
    public Uri? Home { get; init; }
}
