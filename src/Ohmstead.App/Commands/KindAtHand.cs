using System.Collections.Immutable;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.Drafting;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.App.Commands;

/// <summary>The unit on the bench as a verb takes it: its kind and what was read on it. Of an outline with open words its kind is the most probable one.</summary>
/// <param name="Candidates">The kinds that the outline may stand for, most probable first; none where no word is open.</param>
internal sealed record KindAtHand(TypeSheet Sheet, UnitReadings Taken, ImmutableArray<(OutlineKind Kind, double Probability)> Candidates)
{
    /// <param name="readingsPath">Null where nothing was read yet.</param>
    public static KindAtHand Read(string path, string? unitPath, string? readingsPath)
    {
        var text = TextFile.Read(path);
        if (readingsPath is null)
        {
            var unread = InputFiles.Sheet(path, text, unitPath);
            return new(unread, new(unread.Id, unread.SupplyVolts, null, Meter.Usual, [], []), []);
        }
        if (!OutlineFile.IsOne(text))
        {
            var (sheet, taken) = InputFiles.WholeReadings(readingsPath, InputFiles.Sheet(path, text, unitPath));
            return new(sheet, taken, []);
        }
        var kinds = InputFiles.KindReadings(path, text, [readingsPath], unitPath);
        if (kinds[0].Kind.Choices.IsEmpty)
            return new(kinds[0].Sheet, kinds[0].Units[0], []);
        var weights = KindWeights.Of(kinds, new DiagnosisOptions { Threads = Environment.ProcessorCount });
        var best = kinds[weights.Order[0]];
        var candidates = weights.Of(kinds);
        Console.Error.WriteLine(
            $"{path}: {Shown.Choices(best.Kind)}, the likeliest ({ValueText.Percent(candidates[0].Probability)}) of {Counted.Of(candidates.Length, "type")} that this outline may stand for."
        );
        return new(best.Sheet, best.Units[0], candidates);
    }
}
