using System.Collections.Immutable;
using System.Text;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Perf.Experiments.Limits;

namespace Ohmstead.Perf.Experiments.Drafted;

/// <summary>How good a sheet is that was drafted from an outline, on types that nobody tuned on, with ngspice as the unit.</summary>
internal static class DraftedExperiment
{
    /// <summary>Units of each type in a full run.</summary>
    public const int FullUnits = 40;

    /// <summary>Units of each type from which on the page is written: fewer are a look at the program.</summary>
    public const int LeastUnits = 10;

    /// <summary>Units of each type whose type is asked for: a diagnosis for each candidate, and two more.</summary>
    private const int MostNamed = 10;

    /// <summary>
    /// Runs it. Units and results stay in .build/drafted: a run that was stopped goes on where it was, and with another method of
    /// Electrical it begins again with the same units.
    /// </summary>
    public static ImmutableArray<Asked> Run(string root, int units, StringBuilder page)
    {
        var folder = Path.Combine(root, ".build/drafted");
        var kept = new KeptResults(Path.Combine(folder, $"results-{typeof(Drafter).Module.ModuleVersionId:N}.tsv"));
        var types = new TrialType[TrialType.Names.Length];
        Each(types.Length, n => types[n] = TrialType.Of(root, folder, TrialType.Names[n], units));
        Write(page, FormattableString.Invariant($"{units} units of each type with faults; a full run has {FullUnits}.\n"));
        Write(page, DraftedFigures.Heading);
        var (all, each) = (new DraftedFigures("all"), new List<DraftedFigures>());
        foreach (var type in types)
        {
            var (trial, figures) = (new DraftedTrial(type, kept), new DraftedFigures(type.Name));
            Each(DraftedTrial.Drafts, k => trial.Draft(k, withSound: false));
            Each(DraftedTrial.Drafts, k => trial.Draft(k, withSound: true));
            Both(DraftedTrial.Drafts, trial.Bands, figures.Add, all.Add);
            Both(units, trial.Unit, figures.Add, all.Add);
            Both(Math.Min(units, MostNamed), trial.Named, figures.Add, all.Add);
            each.Add(figures);
            Write(page, figures.Row());
        }
        Write(page, all.Row());
        ImmutableArray<Asked> asked = [.. DraftedFigures.AskedOf(all, each)];
        Write(page, $"\n{Asked.Heading}");
        foreach (var figure in asked)
            Write(page, figure.Row());
        return asked;
    }

    private static void Both<T>(int count, Func<int, T> work, Action<T> one, Action<T> other)
    {
        var results = new T[count];
        Each(count, n => results[n] = work(n));
        foreach (var result in results)
        {
            one(result);
            other(result);
        }
    }

    private static void Each(int count, Action<int> work) =>
        Parallel.For(0, count, new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount }, work);

    private static void Write(StringBuilder page, string line)
    {
        page.AppendLine(line);
        Console.WriteLine(line);
    }
}
