using Ohmstead.Electrical.Reckoning;
using Ohmstead.Workshop.Drawers;

namespace Ohmstead.Workshop.Tests.Drawers;

/// <summary>A batch, its units and its verdict.</summary>
public class BatchCallTests
{
    private const double DaysInYear = 365.25;

    private static DateTimeOffset Now { get; } = DrawerDraft.Noon.AddDays(9000);

    /// <summary>3 of 9 down in 5.2 unit-years against 4 of 64 in 71, six batches: the worked example of docs/formats.md, "batch".</summary>
    private static (Drawer Drawer, Bin Bin, DrawerBatch Batch) Drawn()
    {
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Whistle disc", 0);
        var batches = Enumerable.Range(1, 6).Select(n => draft.Receive(bin, 20, FormattableString.Invariant($"{n}"))).ToList();
        void Fit(Guid batch, int count, int failed, double years)
        {
            for (var n = 0; n < count; n++)
            {
                var at = Now.AddDays(-1000 - years / count * DaysInYear);
                draft.Fit(
                    bin,
                    batch,
                    1,
                    draft.Id(),
                    n < failed ? at : at.AddDays(1000),
                    n < failed ? at.AddDays(years / count * DaysInYear) : null,
                    n < failed
                );
            }
        }
        Fit(batches[0], 9, 3, 5.2);
        for (var n = 1; n < 6; n++)
            Fit(batches[n], n < 5 ? 13 : 12, n < 5 ? 1 : 0, 71.0 * (n < 5 ? 13 : 12) / 64);
        var drawer = draft.Drawer;
        return (drawer, drawer.Find(bin)!, drawer.Find(bin)!.Batches[0]);
    }

    [Fact]
    public void A_suspect_batch_names_the_units_it_is_in_and_the_owners_to_call()
    {
        var (drawer, bin, batch) = Drawn();
        var call = BatchCall.Of(drawer, bin, batch, Now);
        Assert.Equal((9, 6), (call.Parts.Length, call.StillOut.Count()));
        Assert.All(call.StillOut, p => Assert.Equal(("An owner", "by phone"), (p.Owner, p.Contact)));
        Assert.Equal("suspect", call.Answer!.Verdict);
        Assert.Equal(91.3, call.Answer.ChanceWorseByFactorPercent, 1);
        Assert.Equal(
            (3.6, 21.7),
            (Math.Round(call.Answer.ChanceByLuckPercent, 1), Math.Round(call.Answer.ChanceByLuckAllBatchesPercent, 1))
        );
        Assert.Equal(2.06, call.Answer.ExpectedMore, 2);
        Assert.Equal("Suspect batch. Call the owners before it fails on them.", call.Verdict);
        Assert.Equal("3 of 9 failed in 5.2 years of use.", call.Reasons(drawer, Now)[0]);
        Assert.Equal("Of other batches 4 of 64 failed in 71 years.", call.Reasons(drawer, Now)[1]);
    }

    /// <summary>Nobody keeps a bin for parts that fail; whom to call must survive it.</summary>
    [Fact]
    public void The_batches_of_a_bin_that_was_removed_still_say_whom_to_call()
    {
        var (drawer, bin, batch) = Drawn();
        var gone = Drawer.Of(
            [.. drawer.Entries, new DrawerEntry(Guid.NewGuid(), Now, "bench", [new BinSaid(bin.Id) { IsGone = true }])],
            drawer.Fitted
        );
        Assert.Empty(gone.Bins);
        Assert.Equal(
            BatchCall.All(drawer, Now).Select(c => (c.Batch.Id, c.Verdict, c.StillOut.Count())),
            BatchCall.All(gone, Now).Select(c => (c.Batch.Id, c.Verdict, c.StillOut.Count()))
        );
        Assert.Equal(6, BatchCall.Find(gone, batch.Id, Now)!.StillOut.Count());
    }

    [Fact]
    public void The_batch_that_stands_out_comes_first_and_one_that_is_in_no_unit_not_at_all()
    {
        var (drawer, _, batch) = Drawn();
        var all = BatchCall.All(drawer, Now);
        Assert.Equal((6, batch.Id), (all.Length, all[0].Batch.Id));
        Assert.True(all[0].StandsOut);
        Assert.All(all.Skip(1), c => Assert.False(c.StandsOut));
        var draft = new DrawerDraft();
        var bin = draft.Bin("C1", "Whistle disc", 0);
        draft.Receive(bin, 3, "7");
        Assert.Empty(BatchCall.All(draft.Drawer, Now));
        Assert.Equal(
            "No part of this batch is in a unit yet.",
            BatchCall.Of(draft.Drawer, draft.Drawer.Find(bin)!, draft.Drawer.Find(bin)!.Batches[0], Now).Verdict
        );
    }

    [Fact]
    public void The_question_is_one_that_reckon_takes()
    {
        var (drawer, bin, batch) = Drawn();
        var read = QuestionFile.Read(BatchCall.Question(drawer, bin, batch, Now), null);
        Assert.Empty(read.Problems);
        Assert.Empty(read.Remarks);
    }
}
