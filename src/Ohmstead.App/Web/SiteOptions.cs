namespace Ohmstead.App.Web;

/// <summary>How the tool is served.</summary>
/// <param name="Port">Port on this machine; 0 for any free one.</param>
/// <param name="IsOnLan">True to listen on the local network too, for paired devices.</param>
/// <param name="IsDemo">True when the workshop is the invented one.</param>
internal sealed record SiteOptions(int Port, bool IsOnLan, bool IsDemo)
{
    /// <summary>Where the tool is found unless told otherwise; no known service uses it.</summary>
    public const int UsualPort = 18600;

    /// <summary>The data folder, where what belongs to this machine on the network is kept too; null where it is thrown away.</summary>
    public string? Folder { get; init; }

    /// <summary>The port of the encrypted door for devices.</summary>
    public int LanPort => Port == 0 ? 0 : Port + 1;

    /// <summary>The bench from which this invented workshop was opened; null where there is none.</summary>
    public Uri? Home { get; init; }
}
