namespace Ohmstead.App.Web;

/// <summary>Where a running site is found on this machine.</summary>
internal static class SiteAddress
{
    /// <summary>With the port that was really taken.</summary>
    public static Uri Of(WebApplication app) =>
        new UriBuilder(app.Urls.First(u => u.StartsWith("http:", StringComparison.Ordinal))) { Host = "127.0.0.1" }.Uri;
}
