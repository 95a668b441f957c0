using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>A unit without a type, among types that share its plate.</summary>
public sealed class WhichTypeTests
{
    private static readonly KindAnswers Heavy = AskedUnits.Single with { Title = "Heavy" };

    private static TypeSheet Sheet(KindAnswers answers, string id) => TypeDraft.Read(answers, id).Kinds!.Kinds[0].Sheet;

    private static BenchUnit Unit(double? volts, double? watts, params Fact[] facts) =>
        UnitHistory.Fold([
            .. ((Fact[])[new TakenIn("1", "", "", ""), new PlateRead(volts, watts), .. NamedPosts.Read("A B U"), .. facts]).Select(
                (f, n) => new Entry(new Guid(n + 1, 0, 0, new byte[8]), Guid.Empty, n + 1, DateTimeOffset.UnixEpoch, "bench", f)
            ),
        ]);

    [Theory]
    [InlineData(120.0, 90.0, "one")]
    [InlineData(115.0, 90.0, "one")]
    [InlineData(120.0, null, "one two")]
    [InlineData(120.0, 150.0, "two")]
    [InlineData(230.0, 90.0, "")]
    [InlineData(null, 90.0, "")]
    public void Types_share_a_plate_by_its_volts_and_its_watts_where_it_says_them(double? volts, double? watts, string shared) =>
        Assert.Equal(
            shared,
            string.Join(
                ' ',
                WhichType
                    .SharingPlate(Unit(volts, watts), [Sheet(Heavy, "one"), Sheet(Heavy with { Watts = "150" }, "two")])
                    .Select(s => s.Id)
            )
        );

    /// <summary>The drafted primary has 7.6 Ω at 90 W and 4.0 Ω at 150 W, each give or take 25 % (docs/methods/outline.md): 7.8 Ω speaks for the first.</summary>
    [Fact]
    public void Readings_say_which_type_it_is_and_a_type_without_its_posts_is_none()
    {
        TypeSheet[] sheets =
        [
            Sheet(Heavy, "one"),
            Sheet(Heavy with { Watts = "150" }, "two"),
            Sheet(Heavy with { Posts = [new() { Post = "X", Return = "U" }] }, "three"),
        ];
        var unit = CarryOver.Plain(Unit(120, null, new ReadingEntered("untyped-blades", Shown.Number(7.8), BenchState.AsSheet)));
        var answer = WhichType.Of(unit, sheets, UsualShop.Make(), new DiagnosisOptions())!;
        var chances = answer.Kinds.ToDictionary(k => k.Kind.Name, k => k.Probability, StringComparer.Ordinal);
        Assert.True(chances["one"] > 2 * chances["two"], FormattableString.Invariant($"{chances["one"]} beside {chances["two"]}"));
        Assert.Equal(0, chances["three"]);
        Assert.Equal(1, chances.Values.Sum() + answer.None, 6);
        Assert.Null(WhichType.Of(CarryOver.Plain(Unit(120, 90)), sheets, UsualShop.Make(), new DiagnosisOptions()));
    }
}
