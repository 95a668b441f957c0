using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.Tests.Outlines;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.Drafting;

/// <summary>Which of several kinds a unit is; the units are solved by the model itself.</summary>
public class IdentifierTests
{
    private static readonly string[] Ids = ["blades", "ohms-b", "ohms-c", "ohms-t", "volts-b", "volts-c", "t-full", "t-load"];

    /// <summary>A kind whose numbers are known: those of the outline, with the usual spreads of units.</summary>
    private static TypeSheet Known(string id, double b = 6, double watts = 150, double full = 16)
    {
        var text = OutlineText.Of(
            string.Create(
                CultureInfo.InvariantCulture,
                $$"""{ "block": "winding", "id": "main", "from": "a", "posts": { "b": {{b}}, "c": 14 } }, { "block": "throttle", "id": "t", "kind": "roller", "volts": [5, {{full}}] }"""
            ),
            string.Create(CultureInfo.InvariantCulture, $$"""{ "volts": 120, "watts": {{watts}} }""")
        );
        var document = TypeSheetFile.JsonOf(OutlineText.Sheet(text));
        document["id"] = id;
        void Strip(JsonNode? at)
        {
            if (at is JsonArray a)
                foreach (var item in a)
                    Strip(item);
            if (at is not JsonObject o)
                return;
            o.Remove("spread");
            o.Remove("kindError");
            foreach (var (_, value) in o)
                Strip(value);
        }
        Strip(document);
        return TypeSheetFile.Read(document.ToJsonString()).Required;
    }

    private static string Readings(TypeSheet unit, string[] ids, string more = "", params string[] faults)
    {
        var model = new UnitModel(unit);
        var catalogue = new FaultCatalogue(model);
        Fault[] there =
        [
            .. faults.Select(f =>
                Fault.TryParse(f, catalogue, out var fault, out _, out var why) ? fault : throw new InvalidOperationException(why)
            ),
        ];
        var values = model.Nominal.Copy();
        foreach (var f in there)
            f.ApplyTo(values);
        var taken = ids.Select(id => unit.FindReading(id)!)
            .Select(r =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $$"""{ "id": "{{r.Id}}", "value": {{new ReadingSolver().Solve(new FaultedCircuits(model, r, r.State).For(there), values).Value!.Value:R}} }"""
                )
            );
        return $$"""{ "ohmstead": "readings/1", "sheet": "anything", "readings": [ {{string.Join(", ", taken)}} {{more}} ] }""";
    }

    private static KindAnswer Run(string readings, double none, params TypeSheet[] kinds) =>
        Identifier.Run([.. kinds.Select(k => PossibleKinds.Read(k.Id, 1, k, readings).Required)], none, new DiagnosisOptions());

    [Fact]
    public void A_faulty_unit_is_found_among_kinds_that_look_alike()
    {
        var (six, seven) = (Known("six"), Known("seven", b: 7));
        var answer = Run(Readings(seven, Ids, faults: ["roller-t:worn=2.5"]), 0.05, six, seven);
        Assert.Equal(["six", "seven"], answer.Kinds.Select(k => k.Kind.Name));
        Assert.Equal(1, answer.Kinds.Sum(k => k.Probability) + answer.None, 9);
        Assert.True(answer.Kinds[1].Probability > 0.9, answer.Kinds[1].Probability.ToString(CultureInfo.InvariantCulture));
        Assert.Equal(["roller-t:worn"], answer.Kinds[1].Faults.Select(f => f.Name));
        Assert.True(answer.Kinds[0].LogEvidence < answer.Kinds[1].LogEvidence - 3);
        Assert.Empty(answer.Alike);
    }

    [Fact]
    public void A_stranger_is_none_of_these_and_more_so_the_likelier_strangers_are()
    {
        // 15 V where both have 16, 7.3 V where they have 6 and 7, the ohms of a smaller core.
        var stranger = Readings(Known("other", b: 6.5, watts: 90, full: 15), Ids);
        var answer = Run(stranger, 0.05, Known("six"), Known("seven", b: 7));
        Assert.True(answer.None > 0.6, answer.None.ToString(CultureInfo.InvariantCulture));
        Assert.True(Run(stranger, 0.005, Known("six"), Known("seven", b: 7)).None < answer.None);
        Assert.True(Run(Readings(Known("six"), Ids), 0.05, Known("six"), Known("seven", b: 7)).None < 0.1);
    }

    [Fact]
    public void Kinds_that_read_the_same_so_far_share_and_the_reading_that_tells_them_is_named()
    {
        var (six, seven) = (Known("six"), Known("seven", b: 7));
        var answer = Run(Readings(six, ["blades", "volts-c", "t-full"]), 0.05, six, seven);
        Assert.Equal([0, 1], Assert.Single(answer.Alike));
        Assert.Equal(answer.Kinds[0].Probability, answer.Kinds[1].Probability, 9);
        // Two kinds of equal chance: a reading that splits them says one bit.
        var best = answer.Next.Where(n => n.Spec.Id is "volts-b" or "low-b").MaxBy(n => n.Bits)!;
        Assert.InRange(best.Bits, 0.95, 1);
        // On mains it waits for the insulation checks and the lamp; at 12 V only for the cold ohms.
        Assert.Equal(["blades-posts"], answer.Next.First(n => n.Spec.Id == "low-b").BlockedBy);
        Assert.Contains("lamp-60", answer.Next.First(n => n.Spec.Id == "volts-b").BlockedBy);
        Assert.DoesNotContain(answer.Next, n => n.Spec.Id is "volts-c" or "t-full");
    }

    [Theory]
    [InlineData(""", { "id": "mine", "quantity": "ohms", "between": ["post-a", "post-7"], "value": 1 }""", "no post-7")]
    [InlineData(
        """, { "id": "mine", "quantity": "ohms", "between": ["post-a", "post-b"], "state": { "controls": { "range-t": "high" } }, "value": 1 }""",
        "no range-t"
    )]
    [InlineData(""", { "id": "volts-7", "value": 7 }""", "no reading volts-7")]
    public void A_reading_that_a_kind_cannot_have_excludes_it_and_says_so(string more, string why)
    {
        var six = Known("six");
        var answer = Run(Readings(six, ["blades"], more), 0.05, six);
        Assert.Equal((why, 0.0, 1.0), (answer.Kinds[0].Kind.Excluded, answer.Kinds[0].Probability, answer.None));
        // Unless it is not of this unit.
        var marked = Run(
            Readings(six, ["blades"], more.Replace("\"value\"", "\"notOfUnit\": true, \"value\"", StringComparison.Ordinal)),
            0.05,
            six
        );
        Assert.Equal("", marked.Kinds[0].Kind.Excluded);
        Assert.True(marked.Kinds[0].Probability > 0.5);
    }

    [Theory]
    // The one throttle, by a name of another sheet's; the lowest and highest of a throttle on steps; one of two goes by its words.
    [InlineData("roller", "throttle", "1", "t-full")]
    [InlineData("roller", "throttle-main", "1", "t-full")]
    [InlineData("steps", "throttle-t", "1", "t-full")]
    [InlineData("steps", "throttle", "0", "t-low")]
    public void A_control_of_another_name_is_the_same_control(string kind, string name, string position, string id)
    {
        var sheet = OutlineText.Sheet(
            OutlineText.Of(OutlineText.Main + $$""", { "block": "throttle", "id": "t", "kind": "{{kind}}", "volts": [5, 16] }""")
        );
        var kindOf = PossibleKinds
            .Read(
                "x",
                1,
                sheet,
                $$"""
                { "ohmstead": "readings/1", "readings": [ { "id": "mine", "quantity": "ac-volts", "between": ["post-a", "post-t"], "value": 15.8,
                  "state": { "source": { "from": "blade-1", "to": "blade-2", "volts": "mains" }, "controls": { "{{name}}": {{position}} } } } ] }
                """
            )
            .Required;
        Assert.Equal("", kindOf.Excluded);
        Assert.Equal(sheet.FindReading(id)!.State.Controls, Assert.Single(kindOf.Readings!.Readings).Spec.State.Controls);
    }

    [Theory]
    [InlineData(""" "state": { "controls": { "throttle-t": "2" } }""", "no throttle-t=2")]
    [InlineData(""" "state": { "controls": { "whistle": "first" } }""", "no whistle")]
    [InlineData(""" "state": { "lifted": ["w-z"] }""", "no w-z")]
    public void A_place_that_a_kind_has_not_excludes_it_alone(string state, string why) =>
        Assert.Equal(
            why,
            PossibleKinds
                .Read(
                    "x",
                    1,
                    Known("six"),
                    $$"""{ "ohmstead": "readings/1", "readings": [ { "id": "mine", "quantity": "ohms", "between": ["post-a", "post-t"], {{state}}, "value": 1 } ] }"""
                )
                .Required.Excluded
        );

    [Fact]
    public void A_gate_taken_at_fewer_posts_is_a_reading_of_its_own()
    {
        var kind = PossibleKinds
            .Read(
                "x",
                1,
                Known("six"),
                """
                { "ohmstead": "readings/1", "told": { "t-slow": "yes", "smells-of-fish": "no" }, "readings": [ { "id": "blades-posts", "quantity": "ohms", "between": ["blade-1", "post-a"], "value": "OL",
                  "state": { "joined": [["blade-1", "blade-2"], ["post-a", "post-b"]] } } ] }
                """
            )
            .Required;
        Assert.Equal("blades-posts-as-read", Assert.Single(kind.Readings!.Readings).Spec.Id);
        // What the sheet does not ask for is passed over.
        Assert.Equal("t-slow", Assert.Single(kind.Readings.Symptoms).Observation.Id);
    }

    [Fact]
    public void A_reading_given_whole_is_the_same_by_any_name()
    {
        var (six, seven) = (Known("six"), Known("seven", b: 7));
        const string whole =
            """, { "id": "mine", "quantity": "ac-volts", "between": ["post-a", "post-b"], "state": { "source": { "from": "blade-1", "to": "blade-2", "volts": "mains" } }, "value": 7.0 }""";
        var answer = Run(Readings(six, ["blades"], whole), 0.05, six, seven);
        Assert.True(answer.Kinds[1].Probability > 10 * answer.Kinds[0].Probability);
    }

    /// <summary>Against a whole diagnosis on every kind, and on strangers next to the two that fit best.</summary>
    [Theory]
    [InlineData(6.5, "roller-t:worn=2.5")]
    [InlineData(9)]
    public void What_is_left_behind_makes_no_millionth_of_a_probability(double b, params string[] faults)
    {
        const double none = 0.05;
        TypeSheet[] kinds = [Known("far", b: 12, watts: 60), Known("six"), Known("seven", b: 7), Known("small", watts: 100, full: 14)];
        var text = Readings(Known("unit", b: b), Ids, faults: faults);
        var readings = kinds.Select(k => PossibleKinds.Read(k.Id, 1, k, text).Required.Readings!).ToArray();
        var options = new DiagnosisOptions { RankNext = false, IsBenchAsNoted = true };
        double Evidence(int k, Func<TypeSheet, TypeSheet> with) =>
            Diagnoser.Run(new UnitModel(with(TapAlignment.Of(kinds[k], readings[k]))), readings[k], options).LogEvidence;
        double[] own = [.. kinds.Select((_, k) => Evidence(k, s => s))];
        var nearest = Enumerable.Range(0, kinds.Length).OrderByDescending(k => own[k]).Take(2);
        var strange = Math.Log(none) + nearest.Max(k => Evidence(k, Identifier.LetLoose));
        double[] logs = [.. own.Select(l => l + Math.Log((1 - none) / kinds.Length)), strange];
        var best = logs.Max();
        var all = logs.Sum(l => Math.Exp(l - best));
        var answer = Run(text, none, kinds);
        Assert.All(kinds.Index(), k => Assert.Equal(Math.Exp(logs[k.Index] - best) / all, answer.Kinds[k.Index].Probability, 1e-6));
        Assert.Equal(Math.Exp(strange - best) / all, answer.None, 1e-6);
        var first = Array.IndexOf(own, own.Max());
        Assert.Equal(own[first], answer.Kinds[first].LogEvidence, 1e-9);
    }

    /// <summary>A unit of the second kind; the first is far from it, the third as near as can be.</summary>
    [Fact]
    public void A_kind_that_is_hopelessly_behind_is_left()
    {
        TypeSheet[] kinds = [Known("far", b: 12, watts: 60), Known("six"), Known("near", b: 6.01)];
        var text = Readings(kinds[1], Ids);
        var searches = new KindSearches(
            [.. kinds.Select(k => new UnitModel(k))],
            [.. kinds.Select(k => PossibleKinds.Read(k.Id, 1, k, text).Required.Readings!)],
            new DiagnosisOptions()
        );
        Assert.Equal([true, false, false], Enumerable.Range(0, kinds.Length).Select(searches.IsLeft));
        Assert.Empty(searches.Best(1));
    }

    [Theory]
    [InlineData(0.5, true)]
    [InlineData(0.4, false)]
    [InlineData(0.2, false)]
    public void It_is_none_of_these_where_that_is_likelier_than_each(double none, bool isNone)
    {
        KindProbability Kind(double probability) => new(new PossibleKind("k", 1, Known("k"), null, ""), probability, 0, []);
        Assert.Equal(isNone, new KindAnswer([Kind(0.4), Kind(0.1)], none, [], []).IsProbablyNone);
    }
}
