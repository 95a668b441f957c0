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

    /// <summary>Whoever copied the cookie can ask, and can answer wrongly: the device that has the key goes on all the same.</summary>
    [Fact]
    public void The_cookie_alone_takes_neither_challenges_nor_passes_nor_tickets_from_the_device()
    {
        var (pass, ticket, first) = (Prove(DeviceProofs.Page), Prove(DeviceProofs.Live), proofs.Challenge(device.Id));
        for (var n = 0; n < 1000; n++)
        {
            var asked = proofs.Challenge(device.Id);
            Assert.Null(proofs.Prove(device, DeviceProofs.Page, Host, new(asked, "AAAA"), "a"));
        }
        Assert.Null(proofs.Prove(device, DeviceProofs.Page, Host, new(first, "AAAA"), "a"));
        Assert.NotNull(Prove(DeviceProofs.Page, first));
        Assert.True(proofs.IsPass(pass, device.Id, "a"));
        Assert.True(proofs.UseTicket(ticket, device.Id, "a"));
    }

    [Fact]
    public void Passes_and_tickets_of_a_device_go_oldest_first_and_each_use_by_itself()
    {
        var (first, ticket) = (Prove(DeviceProofs.Page), Prove(DeviceProofs.Live));
        hand.Turn(TimeSpan.FromTicks(1));
        var second = Prove(DeviceProofs.Page);
        for (var n = 0; n < 31; n++)
        {
            hand.Turn(TimeSpan.FromTicks(1));
            Assert.NotNull(Prove(DeviceProofs.Page));
        }
        Assert.False(proofs.IsPass(first, device.Id, "a"));
        Assert.True(proofs.IsPass(second, device.Id, "a"));
        Assert.True(proofs.UseTicket(ticket, device.Id, "a"));
    }

    [Fact]
    public void A_challenge_that_was_altered_is_none()
    {
        var challenge = proofs.Challenge(device.Id);
        var parts = challenge.Split('.');
        foreach (
            var other in (string[])
                [
                    $"{parts[0]}.9{parts[1]}.{parts[2]}",
                    $"{parts[0]}.{parts[1]}.{new string('0', 64)}",
                    $"{parts[0]}.{parts[1]}",
                    $".{challenge}",
                    "..",
                    ".",
                    "",
                ]
        )
            Assert.Null(Prove(DeviceProofs.Page, other));
        Assert.NotNull(Prove(DeviceProofs.Page, challenge));
    }

    [Fact]
    public void A_device_that_signs_without_end_is_made_to_wait_and_repeats_nothing()
    {
        var first = proofs.Challenge(device.Id);
        Assert.NotNull(Prove(DeviceProofs.Page, first));
        for (var n = 1; n < 256; n++)
            Assert.NotNull(Prove(DeviceProofs.Page));
        Assert.Null(Prove(DeviceProofs.Page));
        Assert.Null(Prove(DeviceProofs.Page, first));
        hand.Turn(DeviceProofs.ChallengeLife);
        Assert.NotNull(Prove(DeviceProofs.Page));
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
