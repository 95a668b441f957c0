using System.Collections.Immutable;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.Workshop.Papers;

/// <summary>A repair step by step, from its log.</summary>
/// <param name="Steps">In order.</param>
/// <param name="Minutes">All of them together.</param>
/// <param name="Pauses">Stretches of more than 20 minutes in which nothing was entered.</param>
public sealed record Lesson(ImmutableArray<LessonStep> Steps, double Minutes, int Pauses)
{
    /// <summary>Every step of a unit, with the time since the last entry before it that is no photo.</summary>
    public static Lesson Of(BenchUnit unit)
    {
        var photos = PhotosByStep(unit);
        var (steps, pauses) = (ImmutableArray.CreateBuilder<LessonStep>(), 0);
        var cups = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (entry, fact, minutes) in LoggedMinutes.Of(unit))
        {
            if (minutes is null)
                pauses++;
            var own = photos.TryGetValue(entry.Id, out var of) ? of : [];
            if (fact is TakenOff off)
                steps.Add(new(off.Step, true, minutes, cups[off.Step] = off.Cup, off.Words, own));
            else if (fact is PutBack back)
                steps.Add(new(back.Step, false, minutes, cups.GetValueOrDefault(back.Step), back.Why, own));
        }
        return new(steps.ToImmutable(), steps.Sum(s => s.Minutes ?? 0), pauses);
    }

    /// <summary>A photo belongs to the step that it is about and that comes next; where none comes, to the last one before it.</summary>
    private static Dictionary<Guid, ImmutableArray<PhotoAdded>> PhotosByStep(BenchUnit unit)
    {
        var all = new Dictionary<Guid, ImmutableArray<PhotoAdded>>();
        foreach (var (entry, photo) in unit.All<PhotoAdded>())
        {
            var about = unit.Standing.Where(e => StepOf(e.Fact) == photo.About && photo.About.Length > 0).ToList();
            if ((about.Find(e => e.Number > entry.Number) ?? about.LastOrDefault()) is { } step)
                all[step.Id] = (all.TryGetValue(step.Id, out var own) ? own : []).Add(photo);
        }
        return all;
    }

    private static string StepOf(Fact fact) =>
        fact switch
        {
            TakenOff off => off.Step,
            PutBack back => back.Step,
            _ => "",
        };
}

/// <summary>A step of a repair as it was really done.</summary>
/// <param name="Step">Id of the take-apart step.</param>
/// <param name="IsOff">Taken off; put back otherwise.</param>
/// <param name="Minutes">It took; null where it ended a pause.</param>
/// <param name="Cup">Where its pieces lie, or lay until they were put back; 0 for none.</param>
/// <param name="Words">What was written down.</param>
/// <param name="Photos">Taken for it, by their hash and title.</param>
public sealed record LessonStep(string Step, bool IsOff, double? Minutes, int Cup, string Words, ImmutableArray<PhotoAdded> Photos);
