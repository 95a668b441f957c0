using System.Security.Cryptography;
using System.Text;
using Ohmstead.App.Phones;

namespace Ohmstead.App.Tests.Phones;

/// <summary>A challenge is signed once, for one use, at one address, by one key.</summary>
public sealed class DeviceProofsTests : IDisposable
{
    private const string Host = "192.168.7.2:18601";
    private readonly HandClock hand = new();
    private readonly DeviceProofs proofs;
    private readonly ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly Device device;

    public DeviceProofsTests() => (proofs, device) = (new(hand), Of(key));

    public void Dispose() => key.Dispose();

    [Fact]
    public void A_signed_challenge_gives_a_pass_for_pages_for_a_while()
    {
        var pass = Prove(DeviceProofs.Page);
        Assert.True(proofs.IsPass(pass, device.Id, "a"));
        Assert.True(proofs.IsPass(pass, device.Id, "a"));
        Assert.False(proofs.IsPass(pass, device.Id, "b"));
        Assert.False(proofs.IsPass(pass, Guid.NewGuid(), "a"));
        Assert.False(proofs.UseTicket(pass, device.Id, "a"));
        Assert.True(proofs.IsPass(pass, device.Id, "a"));
        Assert.False(proofs.IsPass("", device.Id, "a") || proofs.IsPass(null, device.Id, "a"));
        hand.Turn(DeviceProofs.PassLife - TimeSpan.FromTicks(1));
        Assert.True(proofs.IsPass(Prove(DeviceProofs.Page), device.Id, "a"));
    }

    [Fact]
    public void A_pass_ends_with_its_time_and_when_its_device_is_shut_out()
    {
        var (old, fresh) = (Prove(DeviceProofs.Page), "");
        hand.Turn(DeviceProofs.PassLife);
        Assert.False(proofs.IsPass(old, device.Id, "a"));
        fresh = Prove(DeviceProofs.Page)!;
        proofs.Forget(device.Id);
        Assert.False(proofs.IsPass(fresh, device.Id, "a"));
    }

    [Fact]
    public void A_ticket_opens_one_connection()
    {
        var ticket = Prove(DeviceProofs.Live);
        Assert.False(proofs.IsPass(ticket, device.Id, "a"));
        Assert.True(proofs.UseTicket(ticket, device.Id, "a"));
        Assert.False(proofs.UseTicket(ticket, device.Id, "a"));
        var late = Prove(DeviceProofs.Live);
        hand.Turn(DeviceProofs.ChallengeLife);
        Assert.False(proofs.UseTicket(late, device.Id, "a"));
    }

    [Fact]
    public void A_challenge_counts_once_and_not_when_it_is_old_or_anothers()
    {
        var challenge = proofs.Challenge(device.Id);
        var answer = new DeviceAnswer(challenge, Sign(key, $"ohmstead\npage\n{Host}\n{challenge}"));
        Assert.NotNull(proofs.Prove(device, DeviceProofs.Page, Host, answer, "a"));
        Assert.Null(proofs.Prove(device, DeviceProofs.Page, Host, answer, "a"));
        var late = proofs.Challenge(device.Id);
        hand.Turn(DeviceProofs.ChallengeLife);
        Assert.Null(Prove(DeviceProofs.Page, late));
        Assert.Null(Prove(DeviceProofs.Page, proofs.Challenge(Guid.NewGuid())));
        Assert.Null(Prove(DeviceProofs.Page, Convert.ToHexStringLower(new byte[16])));
        // What was given for one thing is not a challenge.
        Assert.Null(Prove(DeviceProofs.Page, Prove(DeviceProofs.Live)));
    }

    [Fact]
    public void A_signature_for_another_use_another_address_or_by_another_key_proves_nothing()
    {
        using var other = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        Assert.Null(Prove(DeviceProofs.Page, signedUse: DeviceProofs.Live));
        Assert.Null(Prove(DeviceProofs.Live, signedUse: DeviceProofs.Page));
        Assert.Null(Prove(DeviceProofs.Page, signedHost: "192.168.7.66:18601"));
        Assert.Null(Prove(DeviceProofs.Page, by: other));
        Assert.Null(Prove("all", signedUse: "all"));
    }

    [Fact]
    public void A_failed_answer_uses_its_challenge_up()
    {
        var challenge = proofs.Challenge(device.Id);
        Assert.Null(proofs.Prove(device, DeviceProofs.Page, Host, new(challenge, "AAAA"), "a"));
        Assert.Null(Prove(DeviceProofs.Page, challenge));
    }

    [Fact]
    public void Challenges_that_nobody_answers_do_not_pile_up()
    {
        var first = proofs.Challenge(device.Id);
        for (var n = 0; n < 100; n++)
        {
            hand.Turn(TimeSpan.FromTicks(1));
            proofs.Challenge(device.Id);
        }
        Assert.Null(Prove(DeviceProofs.Page, first));
    }

    [Fact]
    public void A_key_is_on_its_own_curve_and_well_formed()
    {
        using var large = ECDsa.Create(ECCurve.NamedCurves.nistP384);
        using var rsa = RSA.Create(2048);
        Assert.True(DeviceKey.IsSigned(device.Key, Sign(key, "x"), "x"));
        Assert.False(DeviceKey.IsSigned(device.Key, Sign(key, "x"), "y"));
        Assert.False(DeviceKey.IsSigned(Of(large).Key, Sign(large, "x"), "x"));
        Assert.False(DeviceKey.IsSigned(Convert.ToBase64String(rsa.ExportSubjectPublicKeyInfo()), Sign(key, "x"), "x"));
        foreach (var none in (string?[])[null, "", "AAAA", "no base 64", new('A', 5000)])
        {
            Assert.False(DeviceKey.IsSigned(none, Sign(key, "x"), "x"));
            Assert.False(DeviceKey.IsSigned(device.Key, none, "x"));
        }
    }

    private string? Prove(string use, string? challenge = null, string? signedUse = null, string? signedHost = null, ECDsa? by = null)
    {
        challenge ??= proofs.Challenge(device.Id);
        var text = $"ohmstead\n{signedUse ?? use}\n{signedHost ?? Host}\n{challenge}";
        return proofs.Prove(device, use, Host, new(challenge, Sign(by ?? key, text)), "a");
    }

    private static string Sign(ECDsa by, string text) =>
        Convert.ToBase64String(by.SignData(Encoding.UTF8.GetBytes(text), HashAlgorithmName.SHA256));

    private static Device Of(ECDsa key) =>
        new(Guid.NewGuid(), "Tablet", null, true, Convert.ToBase64String(key.ExportSubjectPublicKeyInfo()), "");
}
