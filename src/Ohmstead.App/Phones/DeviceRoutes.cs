namespace Ohmstead.App.Phones;

/// <summary>What a device fetches from this machine itself.</summary>
internal static class DeviceRoutes
{
    /// <summary>GET /devices/certificate.crt: the root that a device can be told to trust. No secret: every connection shows it.</summary>
    public static void Map(WebApplication app) =>
        app.MapGet(
            "/devices/certificate.crt",
            (LanDoor door) => Results.File(door.Certificate.RootFile, "application/x-x509-ca-cert", "ohmstead.crt")
        );
}
