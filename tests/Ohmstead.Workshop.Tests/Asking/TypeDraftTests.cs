using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>From answers to a type sheet, and what is done with it afterwards.</summary>
public sealed class TypeDraftTests
{
    private static DraftedType Drafted(KindAnswers answers, params BenchUnit[] units)
    {
        var (kinds, asked, problems) = TypeDraft.Read(answers, AskedUnits.Id);
        Assert.Empty(problems);
        return TypeDraft.Run(kinds!, asked, units, UsualShop.Make(), new DiagnosisOptions());
    }

    private static BenchUnit Unit(params (string Id, double Value)[] readings) =>
        UnitHistory.Fold([
            Entry(1, new TakenIn("1", AskedUnits.Id, "", "")),
            .. readings.Select((r, n) => Entry(n + 2, new ReadingEntered(r.Id, Shown.Number(r.Value), BenchState.AsSheet))),
        ]);

    private static Entry Entry(int number, Fact fact) =>
        new(new Guid(number, 0, 0, new byte[8]), Guid.Empty, number, DateTimeOffset.UnixEpoch, "bench", fact);

    [Fact]
    public void The_three_units_are_drafted_and_each_has_first_readings_to_take()
    {
        foreach (var answers in new[] { AskedUnits.Single, AskedUnits.Twin, AskedUnits.Direct })
        {
            var drafted = Drafted(answers);
            Assert.True(TypeSheetFile.Read(TypeSheetFile.Write(drafted.Sheet)).IsSound);
            Assert.NotEmpty(drafted.Made.Wants);
            Assert.Empty(drafted.Made.Open);
            Assert.Equal(new MadeFrom(1, 0, 0), drafted.Made.From);
        }
    }

    [Fact]
    public void A_breaker_that_nobody_saw_stays_open_at_its_question()
    {
        var open = Drafted(AskedUnits.Single with { Breaker = KindAnswers.Unknown }).Made.Open;
        // Common, throttle, primary and before the fixed post: all as likely before a reading.
        Assert.Equal(["B", "common", "primary", "throttle"], open.Select(o => o.Word).Order(StringComparer.Ordinal));
        Assert.All(open, o => Assert.Equal((KindQuestions.Breaker, 0.25), (o.Question, Math.Round(o.Chance, 6))));
    }

    /// <summary>The blades' ohms are the primary's with the cord's 0.1 Ω (docs/methods/outline.md): a reading of 7.1 Ω makes it 7.0 Ω, near enough.</summary>
    [Fact]
    public void Readings_of_a_unit_give_numbers_and_are_counted()
    {
        var drafted = Drafted(AskedUnits.Single, Unit(("blades", 7.1), ("volts-B", 14.6)));
        Assert.Equal(new MadeFrom(1, 2, 1), drafted.Made.From);
        Assert.Equal("This type was drafted from its plate and 2 readings. Bands are wide.", drafted.Made.From.Words);
        var ohms = drafted.Made.Values.Single(v => v.Path == "elements.primary.ohms");
        Assert.Equal(Origin.Measured, ohms.Origin);
        Assert.InRange(ohms.Value, 6.8, 7.2);
        Assert.Contains("blades", ohms.From);
    }

    [Fact]
    public void Numbers_are_said_in_volts_watts_and_ohms_with_where_they_come_from()
    {
        var drafted = Drafted(AskedUnits.Single);
        var numbers = TypeNumbers.Of(drafted.Sheet, drafted.Made).ToDictionary(n => n.Name, StringComparer.Ordinal);
        Assert.Equal(("120 V", "Plate"), (numbers["Mains volts"].Figure, numbers["Mains volts"].From));
        Assert.Equal(("90 W", "Plate"), (numbers["Plate watts"].Figure, numbers["Plate watts"].From));
        // Open turns are 1.005 of the volts said: docs/methods/outline.md.
        Assert.Equal(
            ("14.1 V", "You said so", "±\u00a03\u00a0%"),
            (numbers["Post B, no load"].Figure, numbers["Post B, no load"].From, numbers["Post B, no load"].Doubt)
        );
        Assert.Equal("6.03 V", numbers["Throttle A, low"].Figure);
        Assert.Equal("18.1 V", numbers["Throttle A, full"].Figure);
        // 0.042·(90/150)^(−1/4)·120²/90 = 7.635 Ω; V²/lossOhms = 9.5·(90/150)^(3/4) = 6.48 W: the table of docs/methods/outline.md.
        Assert.Equal(
            ("7.64 Ω", "Worked out", "±\u00a025\u00a0%"),
            (numbers["Primary, ohms"].Figure, numbers["Primary, ohms"].From, numbers["Primary, ohms"].Doubt)
        );
        Assert.Equal("6.48 W", numbers["Core loss at 120 V"].Figure);
        Assert.Equal(KindQuestions.Fixed, numbers["Post B, no load"].Question);
        Assert.Equal(KindQuestions.Posts(0), numbers["Throttle A, full"].Question);
    }

    /// <summary>Spread² is the units' own² and the doubt about the type²: what a person puts in leaves 3 % of the doubt, and the units' own as it is.</summary>
    [Fact]
    public void A_number_put_in_by_hand_takes_the_doubt_about_the_type_away()
    {
        var drafted = Drafted(AskedUnits.Single);
        var before = (Winding)drafted.Sheet.Elements.Single(e => e.Id == "primary");
        var put = TypeEdit.Put(TypeSheetFile.Write(drafted.Sheet), drafted.Made, "elements.primary.ohms", 6.5)!.Value;
        var after = (Winding)TypeSheetFile.Read(put.Text).Required.Elements.Single(e => e.Id == "primary");
        double Own(Winding w) => Math.Sqrt(Math.Pow(w.Spread.Of("ohms", 0), 2) - Math.Pow(w.KindError.Of("ohms", 0), 2));
        Assert.Equal(6.5, after.Ohms);
        Assert.Equal(0.03, after.KindError.Of("ohms", 0), 6);
        Assert.Equal(Own(before), Own(after), 4);
        var value = put.Made.Values.Single(v => v.Path == "elements.primary.ohms");
        Assert.Equal((6.5, Origin.Stated, 0.03), (value.Value, value.Origin, value.RelativeError));
        Assert.Null(TypeEdit.Put(put.Text, put.Made, "elements.nothing.ohms", 1));
        Assert.Null(TypeEdit.Put(put.Text, put.Made, "elements.primary.ohms", -1));
    }

    [Fact]
    public void A_part_takes_another_name()
    {
        var text = TypeEdit.Name(TypeSheetFile.Write(Drafted(AskedUnits.Single).Sheet), "breaker", "thermal cutout")!;
        Assert.Equal("thermal cutout", Ohmstead.Workshop.Words.PartNames.Of(TypeSheetFile.Read(text).Required, "breaker"));
        Assert.Null(TypeEdit.Name(text, "breaker", " "));
    }

    [Fact]
    public void Plate_and_posts_of_a_unit_are_carried_into_the_answers()
    {
        var unit = UnitHistory.Fold([
            Entry(1, new TakenIn("1", "", "", "")),
            Entry(2, new PlateRead(117, 90)),
            Entry(3, new TerminalNamed("untyped-post-1", "A", true)),
            Entry(4, new TerminalNamed("untyped-post-2", "B", true)),
            Entry(5, new TerminalNamed("untyped-lug-1", "brass lug", false)),
            Entry(6, new TerminalNamed("untyped-post-3", "U", true)),
        ]);
        var answers = CarriedAnswers.Of(unit) with { Count = "1", Runs = "roller", Output = "ac" };
        Assert.Equal(("117", "90"), (answers.Volts, answers.Watts));
        answers = CarriedAnswers.Proposed(answers, KindQuestions.Posts(0));
        Assert.Equal(new ThrottleAnswer { Post = "A", Return = "U" }, answers.Throttle(0));
        answers = CarriedAnswers.Proposed(answers, KindQuestions.Fixed);
        Assert.Equal([new PostAnswer { Post = "B", Return = "U" }], answers.Posts);
        Assert.Equal(answers.Posts, CarriedAnswers.Proposed(answers, KindQuestions.Fixed).Posts);
    }

    [Fact]
    public void An_earlier_version_keeps_what_it_rests_on()
    {
        var made = Drafted(AskedUnits.Single).Made with { From = new(3, 6, 1) };
        var type = new OwnType(AskedUnits.Single, null, made, [new(1, 0, 0), new(2, 2, 1)]);
        Assert.Equal("This type was drafted from its plate and your answers. Bands are wide.", type.Of(1)!.Words);
        Assert.Equal(2, type.Of(2)!.Readings);
        Assert.Equal(6, type.Of(0)!.Readings);
        Assert.Null(type.Of(7));
        Assert.False(type.IsChanged);
        Assert.True((type with { Answers = type.Answers with { Breaker = "throttle" } }).IsChanged);
    }

    [Fact]
    public void A_type_travels_as_one_file_without_units()
    {
        var drafted = Drafted(AskedUnits.Twin);
        var sheet = TypeSheetFile.Write(drafted.Sheet);
        var text = TypeFile.Write(sheet, new OwnType(AskedUnits.Twin, new Guid(9, 0, 0, new byte[8]), drafted.Made, [new(1, 3, 1)]), []);
        Assert.DoesNotContain("00000009", text, StringComparison.Ordinal);
        var file = TypeFile.Read(text)!;
        Assert.Equal((null, 0), (file.Type.Unit, file.Type.Before.Length));
        Assert.Equal(drafted.Made.Values, file.Type.Made!.Values, (a, b) => a.Path == b.Path && a.Value == b.Value && a.Origin == b.Origin);
        Assert.Equal(drafted.Sheet.Elements.Select(e => e.Id), TypeSheetFile.Read(file.SheetText).Required.Elements.Select(e => e.Id));
        Assert.Equal(AskedUnits.Blocks(AskedUnits.Twin), AskedUnits.Blocks(file.Type.Answers));
        Assert.Null(TypeFile.Read(sheet));
        Assert.Null(TypeFile.Read("{"));
    }

    /// <summary>The sheet of the readings tests: blades and ohms unplugged, low volts at the plug, full volts on mains.</summary>
    [Fact]
    public void What_is_wanted_next_comes_unplugged_first_and_mains_last_and_only_what_the_sheet_has()
    {
        WantedNext Want(string id) => new(id, 1, [], 0.1);
        var made = new MadeType(
            "",
            new MadeFrom(1, 0, 0),
            [],
            [Want("left-full"), Want("low-17"), Want("gone"), Want("ohms-left"), Want("blades")],
            []
        );
        Assert.Equal(["ohms-left", "blades", "low-17", "left-full"], made.WantedOf(Readings.OnTheBench.Sheet).Select(w => w.Id));
    }
}
