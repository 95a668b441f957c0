using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>Readings of sound units travel with their type, without a tag or an owner, and are pooled with one's own.</summary>
public sealed class SoundUnitTests
{
    private static readonly Shop Shop = UsualShop.Make();
    private static readonly DraftedType Type = Drafted([]);
    private static readonly UnitModel Model = new(Type.Sheet);

    private static DraftedType Drafted(IReadOnlyCollection<SoundUnit> sound, params BenchUnit[] units)
    {
        var (kinds, asked, _) = TypeDraft.Read(AskedUnits.Single, AskedUnits.Id);
        return TypeDraft.Run(kinds!, asked, units, Shop, new DiagnosisOptions(), sound);
    }

    /// <summary>A unit of an owner, found sound, read at another line's volts and another place of the throttle.</summary>
    private static BenchUnit Unit(int id, bool isSound = true)
    {
        var bench = BenchState.AsSheet with
        {
            SupplyVolts = 117,
            Celsius = 12,
            Throttles = BenchState.AsSheet.Throttles.Add("throttle-a", 0.6),
        };
        Fact[] facts =
        [
            new TakenIn("Tag-77", AskedUnits.Id, "Mrs. Owner", "secret complaint"),
            new ReadingEntered("blades", Shown.Number(7.2), BenchState.AsSheet),
            new ReadingEntered("blades-posts", Shown.OverRange, BenchState.AsSheet),
            new ReadingEntered("a-load", Shown.Number(9.1), bench),
            new ReadingEntered("a-full", Shown.NotTaken("secret words"), bench),
            .. isSound ? new Fact[] { new StageClosed(Stage.Findings, true, "") } : [],
        ];
        return UnitHistory.Fold([
            .. facts.Select(
                (f, n) =>
                    new Entry(
                        new Guid(n + 1, 0, 0, new byte[8]),
                        new Guid(id, 0, 0, new byte[8]),
                        n + 1,
                        DateTimeOffset.UnixEpoch,
                        "bench",
                        f
                    )
            ),
        ]);
    }

    [Fact]
    public void They_come_back_as_they_were_read_and_tell_nobody_whose_they_are()
    {
        var told = Assert.Single(SoundUnit.Of([Unit(1), Unit(2, isSound: false)], Model, Shop));
        Assert.Equal((SoundUnit.MarkOf(Unit(1)), 3), (told.Mark, told.Count));
        var file = TypeFile.Write(TypeSheetFile.Write(Type.Sheet), new OwnType(AskedUnits.Single, Unit(1).Id, Type.Made, []), [told]);
        foreach (var secret in (string[])["Tag-77", "Owner", "secret", Unit(1).Id.ToString()])
            Assert.DoesNotContain(secret, file, StringComparison.Ordinal);
        var came = Assert.Single(TypeFile.Read(file)!.Type.Sound);
        var expected = BenchReadings.Of(Unit(1), Model, Shop).Value!;
        var read = came.On(Type.Sheet)!;
        Assert.Equal(
            expected with
            {
                Readings = [.. expected.Readings.Where(r => r.Spec.Id != "a-full")],
                Symptoms = [],
            },
            read with
            {
                Symptoms = [],
            }
        );
        Assert.Empty(read.Symptoms);
    }

    [Fact]
    public void A_reading_that_the_sheet_does_not_ask_for_is_passed_over()
    {
        var told = Assert.Single(SoundUnit.Of([Unit(1)], Model, Shop));
        Assert.Equal(
            ["blades", "blades-posts"],
            told.On(Type.Sheet with { Readings = [.. Type.Sheet.Readings.Where(r => r.Id != "a-load")] })!.Readings.Select(r => r.Spec.Id)
        );
        Assert.Null(told.On(Type.Sheet with { Readings = [] }));
    }

    [Fact]
    public void A_unit_that_both_benches_have_counts_once_and_as_it_was_read_last()
    {
        var (mine, theirs) = (SoundUnit.Of([Unit(1), Unit(2)], Model, Shop), SoundUnit.Of([Unit(2), Unit(3)], Model, Shop));
        var all = SoundUnit.Together(mine, theirs);
        Assert.Equal(3, all.Select(u => u.Mark).Distinct().Count());
        Assert.Equal([mine[0], theirs[0], theirs[1]], all);
        var pooled = Drafted(theirs, Unit(2)).Made;
        Assert.Equal((2, 7), (pooled.From.Units, pooled.From.Readings));
        var alone = Drafted([], Unit(2)).Made;
        Assert.Equal((1, 4), (alone.From.Units, alone.From.Readings));
        double Doubt(MadeType made) => made.Values.Single(v => v.Path == "elements.primary.ohms").RelativeError;
        Assert.True(Doubt(pooled) < Doubt(alone) && Doubt(alone) < Doubt(Type.Made));
    }

    [Fact]
    public void Two_sheets_of_a_type_differ_where_their_numbers_are_farther_apart_than_their_doubts()
    {
        var text = TypeSheetFile.Write(Type.Sheet);
        var same = NumbersApart.Of((Type.Sheet, Type.Made), (Type.Sheet, Type.Made));
        Assert.Empty(same.Different);
        var usual = Type.Made.Values.Single(v => v.Path == "elements.primary.ohms").Value;
        (string Text, MadeType Made) Put(double ohms) => TypeEdit.Put(text, Type.Made, "elements.primary.ohms", ohms)!.Value;
        NumbersApart Against(double ohms, MadeType mine) =>
            NumbersApart.Of((Type.Sheet, mine), (TypeSheetFile.Read(Put(ohms).Text).Required, Put(ohms).Made));
        // 0.25 and 0.03 together: 1.96 · 0.2518 = 0.4935 in the logarithm.
        Assert.Empty(Against(usual * Math.Exp(0.49), Type.Made).Different);
        var apart = Assert.Single(Against(usual * Math.Exp(-0.50), Type.Made).Different);
        Assert.Equal("Primary, ohms", apart.Name);
        Assert.NotEqual(apart.Mine, apart.Theirs);
        Assert.Equal(same.Same - 1, Against(usual * 2, Type.Made).Same);
    }
}
