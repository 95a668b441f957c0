using CsCheck;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.Solving;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Tests.TypeSheets;

/// <summary>Files spoilt by chance: nothing but a sheet or its problems comes out, and a sheet that comes out can be read.</summary>
public class FuzzTests(ITestOutputHelper output)
{
    private static readonly string[] Texts =
    [
        .. new[] { "tests/Reference/sample/twin-160.sheet.json" }.Concat(Reference.DemoSheets).Select(Reference.Text),
    ];

    private static readonly Gen<string> Spoilt = Gen.Select(
        Gen.Int[0, Texts.Length - 1],
        Gen.Int[0, int.MaxValue - 1],
        (text, seed) => new Mutation(new Random(seed)).Spoil(Texts[text])
    );

    /// <summary>From a fixed seed; CsCheck's own Sample can go further.</summary>
    [Fact]
    public void A_spoilt_sheet_gives_a_sheet_or_problems_and_a_sheet_gives_finite_readings() => Spoil(mutants: 1500, mostSolved: 60);

    [Fact]
    [Trait("kind", "long")]
    public void Ten_thousand_spoilt_sheets_give_a_sheet_or_problems_and_finite_readings() => Spoil(mutants: 10_000, mostSolved: 400);

    private void Spoil(int mutants, int mostSolved)
    {
        var (accepted, solved) = (0, 0);
        Spoilt.Samples(
            mutants,
            text =>
            {
                var parsed = TypeSheetFile.Read(text);
                if (!parsed.IsSound)
                    return parsed.Value is null && parsed.Problems.Count > 0 && parsed.Problems.All(p => p.Path.StartsWith('$'));
                // Every 5th of the accepted ones, so that late samples are solved too.
                if (accepted++ % 5 != 0 || solved >= mostSolved)
                    return true;
                solved++;
                return ReadsFinite(parsed.Required);
            }
        );
        output.WriteLine(FormattableString.Invariant($"{accepted} accepted, {solved} solved"));
        Assert.True(
            accepted > mutants / 10,
            FormattableString.Invariant($"only {accepted} mutants were accepted: the mutations spoil too much")
        );
        Assert.True(solved >= mostSolved / 2);
    }

    [Fact]
    public void A_spoilt_readings_file_gives_readings_or_problems()
    {
        string[] files = [.. Reference.Names("tests/Reference/sample/cases", "*.readings.json").Select(Reference.Text)];
        Gen.Select(
                Gen.Int[0, files.Length - 1],
                Gen.Int[0, int.MaxValue - 1],
                (file, seed) => new Mutation(new Random(seed)).Spoil(files[file])
            )
            .Samples(
                1000,
                text =>
                {
                    var parsed = ReadingsFile.Read(text, Reference.Twin160);
                    return parsed.IsSound || (parsed.Value is null && parsed.Problems.All(p => p.Path.StartsWith('$')));
                }
            );
    }

    [Fact]
    public void A_spoilt_unit_file_gives_a_unit_or_problems()
    {
        const string unit = """
            { "ohmstead": "unit/1", "sheet": "twin-160", "changes": [
                { "replace": { "id": "pilot", "kind": "lamp", "from": "lead-17", "to": "post-common", "volts": 18, "amps": 0.15 } }, { "remove": "w-5" },
                { "add": { "id": "w-x", "kind": "wire", "from": "lead-5", "to": "post-5" } }, { "move": "w-17.to", "to": "post-5" } ],
              "renewed": ["cord-1", "roller-left"], "rewired": ["joint-main", "boost-left"] }
            """;
        Gen.Int[0, int.MaxValue - 1]
            .Select(seed => new Mutation(new Random(seed)).Spoil(unit))
            .Samples(
                1000,
                text =>
                {
                    var parsed = UnitFile.Read(text, Reference.Twin160);
                    return parsed.IsSound || (parsed.Value is null && parsed.Problems.Count > 0);
                }
            );
    }

    private static bool ReadsFinite(TypeSheet sheet)
    {
        var model = new UnitModel(sheet);
        var solver = new ReadingSolver();
        foreach (var r in sheet.Readings)
        {
            var solution = solver.Solve(new FaultedCircuits(model, r, r.State).Usual, model.Nominal);
            Assert.True(
                (solution.Value is not { } value || double.IsFinite(value)) && double.IsFinite(solution.Residual),
                $"{r.Id}: {solution}"
            );
        }
        // The way back must be open too.
        return TypeSheetFile.Read(TypeSheetFile.Write(sheet)).IsSound;
    }
}
