using System.Globalization;
using Ohmstead.Perf;
using Ohmstead.Perf.Benches;
using Ohmstead.Perf.Benchmarks;
using Ohmstead.Perf.Days;
using Ohmstead.Perf.Experiments;
using Ohmstead.Perf.Listening;
using Ohmstead.Perf.Stores;
using Ohmstead.Perf.Stores.Many;

CultureInfo.CurrentCulture = CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
switch (args.FirstOrDefault())
{
    case "bench":
        return BenchmarkRuns.Run(args[1..]);
    case "scaling":
        return Scaling.Run();
    case "ngspice-ratio":
        return SimulatorRatio.Run();
    case "planning":
        return PlanningFigures.Run();
    case "process":
        return ProcessFigures.Run();
    case "questions":
        return QuestionFigures.Run();
    case "store":
        return await StoreFigures.RunAsync();
    case "entry":
        return await EntryFigures.RunAsync();
    case "server":
        return await ServerFigures.RunAsync();
    case "memory":
        return await MemoryFigures.RunAsync(args[1..]);
    case "plan":
        return await PlanFigures.RunAsync();
    case "many":
        return await ManyFigures.RunAsync(args[1..]);
    case "benches":
        return await BenchesFigures.RunAsync(args[1..]);
    case "seen":
        return await SeenFigures.RunAsync();
    case "merge":
        return await MergeFigures.RunAsync();
    case "slow-laptop":
        return await SlowLaptopFigures.RunAsync();
    case "page":
        return PerformancePage.Run(args[1..]);
    case "experiments":
        return ExperimentsPage.Run(RepositoryRoot.Path, args[1..]);
    case "hum":
        return HumPage.Run(RepositoryRoot.Path);
    case "day":
        return DayFigures.Run();
    case "pins":
        return PinnedAnswers.Remake(RepositoryRoot.Path);
    default:
        Console.Error.WriteLine(
            "usage: bench | process | questions | scaling | planning | ngspice-ratio | store | entry | server | memory [UNITS] | plan | benches [SECONDS] | seen | many [SIZE ...] [folder | database] | merge | slow-laptop | page [again] [part ...] | experiments [quick] [units | diagnosis | next | doubt ... | heat-run | minutes | drafted [UNITS | times]] | hum | day | pins"
        );
        return 2;
}
