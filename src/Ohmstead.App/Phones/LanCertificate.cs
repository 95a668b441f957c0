using System.Globalization;
using System.Net;
using System.Net.Security;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Ohmstead.App.Phones;

/// <summary>
/// The certificate by which devices on the local network know this machine. It is made here, with a key of its own (ECDSA, P-256), and
/// signed by a root that is used for this once: the root's key is never kept, so a device that trusts the root trusts this one
/// certificate and nothing that anybody could sign later (docs/decisions/0010-a-bench-on-the-network.md).
/// </summary>
internal sealed class LanCertificate
{
    /// <summary>Longer than this some browsers refuse it, whoever signed it.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromDays(397);

    /// <summary>So long before its end another is made.</summary>
    public static readonly TimeSpan Margin = TimeSpan.FromDays(30);

    /// <summary>A device's clock may be slow by so much.</summary>
    private static readonly TimeSpan Slow = TimeSpan.FromDays(1);

    /// <summary>Addresses of earlier networks that a new one keeps, so that a laptop that goes to and fro needs none each time.</summary>
    private const int MostAddresses = 32;

    private const string ServerUse = "1.3.6.1.5.5.7.3.1";
    private readonly X509Certificate2 own;
    private readonly X509Certificate2 root;

    private LanCertificate(X509Certificate2 own, X509Certificate2 root)
    {
        (this.own, this.root) = (own, root);
        Context = SslStreamCertificateContext.Create(own, [root], offline: true);
        Print = PrintOf(own);
        RootPrint = PrintOf(root);
    }

    /// <summary>What a connection is opened with.</summary>
    public SslStreamCertificateContext Context { get; }

    /// <summary>Its print as a browser shows it: SHA-256, pairs of hexadecimal signs.</summary>
    public string Print { get; }

    /// <summary>The print of the root, which is what a device shows that is asked to trust it.</summary>
    public string RootPrint { get; }

    /// <summary>The root as a file that a device can be told to trust (DER).</summary>
    public byte[] RootFile => root.RawData;

    /// <summary>The last moment at which it counts.</summary>
    public DateTimeOffset Until => new(own.NotAfter.ToUniversalTime());

    /// <summary>The addresses for which it counts.</summary>
    public IReadOnlyList<IPAddress> Addresses =>
        [.. own.Extensions.OfType<X509SubjectAlternativeNameExtension>().SelectMany(names => names.EnumerateIPAddresses())];

    /// <summary>True while nothing speaks for another one.</summary>
    public bool Serves(IReadOnlyList<IPAddress> addresses, DateTimeOffset now) =>
        addresses.Take(MostAddresses).All(Addresses.Contains)
        && new DateTimeOffset(own.NotBefore.ToUniversalTime()) <= now
        && now < Until - Margin;

    /// <summary>Makes one.</summary>
    /// <param name="addresses">This machine's on the network.</param>
    /// <param name="earlier">The one before, whose addresses are kept too; null for none.</param>
    public static LanCertificate Make(IReadOnlyList<IPAddress> addresses, LanCertificate? earlier, DateTimeOffset now)
    {
        var (from, until) = (now - Slow, now - Slow + Life);
        using var rootKey = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        // The name tells the roots of several machines apart in a device's list; nothing is decided by it.
        var name = $"Ohmstead {Convert.ToHexStringLower(SHA256.HashData(key.ExportSubjectPublicKeyInfo()))[..8]}";
        var root = RootOf(name, rootKey, from, until);
        var asked = new CertificateRequest($"CN={name} bench", key, HashAlgorithmName.SHA256);
        asked.CertificateExtensions.Add(new X509BasicConstraintsExtension(false, false, 0, true));
        asked.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, true));
        asked.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerUse)], false));
        asked.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(asked.PublicKey, false));
        asked.CertificateExtensions.Add(X509AuthorityKeyIdentifierExtension.CreateFromCertificate(root, true, false));
        var names = new SubjectAlternativeNameBuilder();
        foreach (var address in addresses.Concat(earlier?.Addresses ?? []).Append(IPAddress.Loopback).Distinct().Take(MostAddresses))
            names.AddIpAddress(address);
        asked.CertificateExtensions.Add(names.Build());
        using var bare = asked.Create(root, from, until, Serial());
        using var whole = bare.CopyWithPrivateKey(key);
        // Read back as it will be from the disk: one system takes no key for a connection that never was in a file.
        using var open = X509CertificateLoader.LoadCertificate(root.RawData);
        return Read(FileOf(whole, open))!;
    }

    /// <summary>Reads one from the bytes of its file; null when they are none.</summary>
    public static LanCertificate? Read(byte[] file)
    {
        try
        {
            var all = X509CertificateLoader.LoadPkcs12Collection(file, null, X509KeyStorageFlags.Exportable);
            return all.FirstOrDefault(c => c.HasPrivateKey) is { } own && all.FirstOrDefault(c => !c.HasPrivateKey) is { } root
                ? new(own, root)
                : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    /// <summary>The bytes of its file, the key in them.</summary>
    public byte[] Write() => FileOf(own, root);

    private static byte[] FileOf(params X509Certificate2[] all) => new X509Certificate2Collection(all).Export(X509ContentType.Pkcs12)!;

    private static X509Certificate2 RootOf(string name, ECDsa key, DateTimeOffset from, DateTimeOffset until)
    {
        var asked = new CertificateRequest($"CN={name}", key, HashAlgorithmName.SHA256);
        asked.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, true, 0, true));
        asked.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.KeyCertSign, true));
        asked.CertificateExtensions.Add(new X509SubjectKeyIdentifierExtension(asked.PublicKey, false));
        return asked.CreateSelfSigned(from, until);
    }

    private static byte[] Serial()
    {
        var serial = RandomNumberGenerator.GetBytes(16);
        // A serial number is positive.
        serial[0] = (byte)((serial[0] & 0x7f) | 0x40);
        return serial;
    }

    private static string PrintOf(X509Certificate2 certificate) =>
        string.Join(':', certificate.GetCertHash(HashAlgorithmName.SHA256).Select(b => b.ToString("X2", CultureInfo.InvariantCulture)));
}
