using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Readings;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Testing;
using Ohmstead.Workshop.Tests.Readings;
using TestResult = Ohmstead.Workshop.Testing.TestResult;

namespace Ohmstead.Workshop.Tests.Testing;

/// <summary>A unit of the sample sheet, looked over, on a bench that has the limits a shop starts with.</summary>
internal sealed class TestedUnit
{
    /// <summary>Its insulation tester is off by no more than 5 % and 0.03 MΩ, as in docs/methods/proving.md.</summary>
    public static readonly Shop Shop = OnTheBench.Shop with
    {
        Limits = UsualShop.Make().Limits,
        Meters =
        [
            .. OnTheBench.Shop.Meters.Select(m =>
                m.Id == "tester" ? m with { Errors = m.Errors.SetItem("insulation-ohms", new(5, 30e3, 0, 0)) } : m
            ),
        ],
    };

    public OnTheBench Bench { get; } = new();

    public TestedUnit(bool isReady = true)
    {
        if (!isReady)
            return;
        foreach (var item in UsualShop.Make().LookOver)
            Bench.Add(new ConditionNoted(item.Id, "good", Decision.Leave, ""));
        Bench.ColdGates().Read("lamp-60", 108);
    }

    public ImmutableArray<BenchTest> All => TestList.Of(Bench.Unit, OnTheBench.Sheet, Shop);

    public BenchTest Get(string id) => All.Single(t => t.Id == id);

    public TestResult Result(string id)
    {
        var test = Get(id);
        return TestResult.Of(test, Bench.Unit, Bench.Model, Shop, TestBand.Of(test, Bench.Model, Shop, Bench.Unit.Bench));
    }

    public TestedUnit Add(params Fact[] facts)
    {
        foreach (var fact in facts)
            Bench.Add(fact);
        return this;
    }

    /// <summary>Enters what the meter shows, as the screen does.</summary>
    public EnteredTest Take(string id, params Shown[] shown)
    {
        var entered = TestEntry.Take(Get(id), shown, Bench.Unit.Bench, Shop, Result(id).Limit);
        Add([.. entered.Facts]);
        return entered;
    }

    public EnteredTest TakeTouch(double oneWay, double other, TouchSetup setup)
    {
        var entered = TestEntry.TakeTouch(
            Get(TestList.Touch),
            (Shown.Number(oneWay), Shown.Number(other)),
            setup,
            Bench.Unit.Bench,
            Shop,
            Result(TestList.Touch).Limit!
        );
        Add([.. entered.Facts]);
        return entered;
    }

    public Resistive Breaker => Bench.Model.Sheet.Elements.OfType<Resistive>().Single(e => e.Kind == ElementKind.Breaker);

    public BreakerPlan Plan(double amps) => BreakerPlan.Of(Bench.Unit, Bench.Model.Sheet, Breaker, amps, Shop);
}
