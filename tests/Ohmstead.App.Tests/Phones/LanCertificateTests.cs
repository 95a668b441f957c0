using System.Globalization;
using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Ohmstead.App.Phones;

namespace Ohmstead.App.Tests.Phones;

/// <summary>The certificate that the tool makes itself: for these addresses, for a year, by a root that signs nothing else ever.</summary>
public sealed class LanCertificateTests : IDisposable
{
    private static readonly DateTimeOffset Now = new(2030, 5, 1, 12, 0, 0, TimeSpan.Zero);
    private static readonly IPAddress Here = IPAddress.Parse("192.168.7.2");
    private static readonly IPAddress Club = IPAddress.Parse("10.1.2.3");
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("ohmstead-cert-");

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void Its_chain_holds_for_its_addresses_by_its_own_root_alone()
    {
        var made = LanCertificate.Make([Here], null, Now);
        using var root = X509CertificateLoader.LoadCertificate(made.RootFile);
        var own = made.Context.TargetCertificate;
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.Add(root);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.VerificationTime = Now.UtcDateTime;
        Assert.True(chain.Build(own), string.Join("; ", chain.ChainStatus.Select(s => s.StatusInformation)));
        Assert.True(own.MatchesHostname("192.168.7.2"));
        Assert.False(own.MatchesHostname("192.168.7.3"));
        // It signs nothing: only its root does, whose key is nowhere.
        Assert.False(own.Extensions.OfType<X509BasicConstraintsExtension>().Single().CertificateAuthority);
        Assert.False(root.HasPrivateKey);
        using var key = own.GetECDsaPublicKey()!;
        Assert.Equal(256, key.KeySize);
        chain.ChainPolicy.CustomTrustStore.Clear();
        chain.ChainPolicy.CustomTrustStore.Add(X509CertificateLoader.LoadCertificate(LanCertificate.Make([Here], null, Now).RootFile));
        Assert.False(chain.Build(own));
    }

    [Fact]
    public void Its_print_is_the_hash_of_what_a_browser_is_shown()
    {
        var made = LanCertificate.Make([Here], null, Now);
        var hash = SHA256.HashData(made.Context.TargetCertificate.RawData);
        Assert.Equal(string.Join(':', hash.Select(b => b.ToString("X2", CultureInfo.InvariantCulture))), made.Print);
        Assert.Equal(Convert.ToHexString(hash)[..PairingDesk.PrintLetters], PairingDesk.Short(made.Print));
        Assert.NotEqual(made.Print, made.RootPrint);
    }

    [Fact]
    public void It_serves_until_a_month_before_its_end_and_for_no_address_that_it_does_not_name()
    {
        var made = LanCertificate.Make([Here], null, Now);
        Assert.True(made.Serves([Here], Now));
        Assert.False(made.Serves([Here, Club], Now));
        Assert.True(made.Serves([], made.Until - LanCertificate.Margin - TimeSpan.FromMinutes(1)));
        Assert.False(made.Serves([], made.Until - LanCertificate.Margin));
        Assert.False(made.Serves([Here], Now - TimeSpan.FromDays(2)));
        Assert.Equal(LanCertificate.Life, made.Until - Now + TimeSpan.FromDays(1));
    }

    [Fact]
    public void The_same_one_is_there_after_a_restart_and_only_its_owner_reads_the_file()
    {
        var door = Door(Here);
        var again = Door(Here);
        Assert.Equal(door.Certificate.Print, again.Certificate.Print);
        Assert.False(again.IsChanged);
        var file = Path.Combine(folder.FullName, "network", "certificate.pfx");
        Assert.True(File.Exists(file));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(file));
            Assert.Equal(
                UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute,
                File.GetUnixFileMode(Path.GetDirectoryName(file)!)
            );
        }
    }

    [Fact]
    public void At_another_network_it_is_made_anew_for_both_and_going_back_needs_none()
    {
        var home = Door(Here).Certificate.Print;
        var club = Door(Club);
        Assert.True(club.IsChanged);
        Assert.NotEqual(home, club.Certificate.Print);
        var back = Door(Here);
        Assert.Equal(club.Certificate.Print, back.Certificate.Print);
        Assert.False(back.IsChanged);
    }

    [Fact]
    public void An_address_that_comes_while_the_tool_runs_is_seen_when_a_code_is_shown()
    {
        IReadOnlyList<IPAddress> addresses = [Here];
        var door = new LanDoor(new NetworkFolder(folder.FullName), new HandClock(), () => addresses);
        var before = door.Certificate.Print;
        Assert.Equal([Here], door.Addresses());
        Assert.Equal(before, door.Certificate.Print);
        addresses = [Here, Club];
        Assert.Equal([Here, Club], door.Addresses());
        Assert.NotEqual(before, door.Certificate.Print);
        Assert.Contains(Club, door.Certificate.Addresses);
        Assert.True(door.IsChanged);
    }

    [Fact]
    public void A_file_that_is_none_makes_a_new_one()
    {
        Door(Here);
        File.WriteAllText(Path.Combine(folder.FullName, "network", "certificate.pfx"), "no certificate");
        Assert.Contains(Here, Door(Here).Certificate.Addresses);
    }

    private LanDoor Door(IPAddress address) => new(new NetworkFolder(folder.FullName), new HandClock(), () => [address]);
}
