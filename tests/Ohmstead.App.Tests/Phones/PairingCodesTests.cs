using Ohmstead.App.Phones;
using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Phones;

/// <summary>A code lets one device in, once, for five minutes; who guesses is not listened to, and takes the codes away.</summary>
public sealed class PairingCodesTests
{
    private static readonly DeviceRights Rights = new(null, MayWork: false, TimeSpan.FromDays(7));
    private readonly HandClock hand = new();
    private readonly PairingCodes codes;

    public PairingCodesTests() => codes = new(hand);

    [Fact]
    public void It_gives_what_it_was_made_for_and_is_used_up_by_that()
    {
        var code = codes.New(Rights).Text;
        Assert.Equal(Rights, codes.Find(code, "a"));
        Assert.Equal(Rights, codes.Use(code, "a"));
        Assert.Null(codes.Find(code, "a"));
        Assert.Null(codes.Use(code, "a"));
    }

    [Fact]
    public void It_is_eight_signs_that_are_not_taken_for_each_other_typed_in_any_case()
    {
        var code = codes.New(Rights).Text;
        Assert.Matches("^[A-HJ-NP-Z2-9]{4}-[A-HJ-NP-Z2-9]{4}$", code);
        Assert.NotEqual(code, codes.New(Rights).Text);
#pragma warning disable CA1308 // A person types small letters.
        Assert.NotNull(codes.Find(code.Replace("-", " ", StringComparison.Ordinal).ToLowerInvariant(), "a"));
#pragma warning restore CA1308
    }

    [Fact]
    public void It_is_good_for_five_minutes_or_until_it_is_taken_back()
    {
        var code = codes.New(Rights);
        Assert.Equal(hand.GetUtcNow().AddMinutes(5), code.Until);
        hand.Turn(TimeSpan.FromMinutes(5) - TimeSpan.FromTicks(1));
        Assert.NotNull(codes.Find(code.Text, "a"));
        hand.Turn(TimeSpan.FromTicks(1));
        Assert.Null(codes.Find(code.Text, "a"));
        var gone = codes.New(Rights);
        codes.Forget(gone);
        Assert.Null(codes.Find(gone.Text, "a"));
    }

    [Fact]
    public void An_address_that_tried_five_times_in_vain_is_not_listened_to_for_ten_minutes()
    {
        var code = codes.New(Rights).Text;
        for (var n = 0; n < PairingCodes.MostOfAddress - 1; n++)
            Assert.Null(codes.Find("AAAA-AAAA", "guesser"));
        Assert.NotNull(codes.Find(code, "guesser"));
        Assert.Null(codes.Find("AAAA-AAAA", "guesser"));
        Assert.Null(codes.Find(code, "guesser"));
        Assert.NotNull(codes.Find(code, "tablet"));
        hand.Turn(PairingCodes.Rest);
        Assert.NotNull(codes.Find(codes.New(Rights).Text, "guesser"));
    }

    [Fact]
    public void Ten_tries_in_vain_from_anywhere_take_every_code_back_and_that_is_told()
    {
        var told = 0;
        codes.Guessed += () => told++;
        var code = codes.New(Rights).Text;
        for (var n = 0; n < PairingCodes.MostOfCode - 1; n++)
            codes.Find("AAAA-AAAA", $"address {(char)('a' + n)}");
        Assert.Equal((Rights, 0), (codes.Find(code, "tablet"), told));
        codes.Fail("another");
        Assert.Null(codes.Find(code, "tablet"));
        Assert.Equal(1, told);
        // One that is made afterwards is good.
        Assert.NotNull(codes.Find(codes.New(Rights).Text, "tablet"));
    }

    [Fact]
    public void A_resting_address_cannot_take_codes_back()
    {
        var code = codes.New(Rights).Text;
        for (var n = 0; n < 100; n++)
            codes.Find("AAAA-AAAA", "guesser");
        Assert.NotNull(codes.Find(code, "tablet"));
    }

    [Fact]
    public void Which_address_is_not_listened_to_is_told_once_and_until_when()
    {
        var told = 0;
        codes.Rested += () => told++;
        for (var n = 0; n < PairingCodes.MostOfAddress - 1; n++)
            codes.Find("AAAA-AAAA", "192.168.7.9");
        Assert.Equal(((string, DateTimeOffset)?)null, codes.Resting);
        Assert.Equal(0, told);
        codes.Find("AAAA-AAAA", "192.168.7.9");
        Assert.Equal(("192.168.7.9", hand.GetUtcNow() + PairingCodes.Rest), codes.Resting);
        codes.Find("AAAA-AAAA", "192.168.7.9");
        Assert.Equal(1, told);
        hand.Turn(PairingCodes.Rest);
        Assert.Equal(((string, DateTimeOffset)?)null, codes.Resting);
    }

    /// <summary>Somebody who takes a new address for each try has as many tries as there are addresses, no more.</summary>
    [Fact]
    public void Past_four_thousand_addresses_all_new_ones_are_counted_as_one_until_the_old_ones_have_rested()
    {
        codes.Find("AAAA-AAAA", "known");
        for (var n = 1; n < PairingCodes.MostAddresses; n++)
            codes.Find("AAAA-AAAA", FormattableString.Invariant($"first {n}"));
        var code = codes.New(Rights).Text;
        for (var n = 0; n < PairingCodes.MostOfAddress; n++)
        {
            Assert.NotNull(codes.Find(code, "tablet"));
            codes.Find("AAAA-AAAA", FormattableString.Invariant($"later {n}"));
        }
        Assert.Null(codes.Find(code, "tablet"));
        Assert.NotNull(codes.Find(code, "known"));
        hand.Turn(PairingCodes.Rest);
        Assert.NotNull(codes.Find(codes.New(Rights).Text, "tablet"));
    }

    [Fact]
    public async Task A_device_makes_no_code_for_another_one()
    {
        await Task.Run(
            () =>
            {
                Asker.Begin(new Asker("12345678", "Tablet", () => true));
                Assert.Throws<NotAllowed>(() => codes.New(Rights));
            },
            Xunit.TestContext.Current.CancellationToken
        );
        Assert.Null(Asker.Now);
    }
}
