namespace Ohmstead.Mutants;

/// <summary>Tries a mistake: the classes that come by it, in batches that grow, to the first in which a test fails.</summary>
internal static class Trial
{
    /// <summary>Processor time of the first batch, unless its first class takes longer; each further one may take three times as long.</summary>
    private static readonly TimeSpan First = TimeSpan.FromSeconds(0.3);

    private const double Growth = 3;

    /// <summary>A batch that takes so many times its usual processor time, and this besides, does not come to an end.</summary>
    private const double Overtime = 5;

    private static readonly TimeSpan Besides = TimeSpan.FromSeconds(8);

    public static Outcome Of(Place place, int number, CoreTests tests, Recordings recordings)
    {
        var classes = recordings.Of(number, place.Folder);
        foreach (var batch in Batches(classes))
        {
            var most = Besides + (Overtime * Sum(batch));
            string[] again = [.. batch.Where(c => c.IsSameAgain).Select(c => c.Name)];
            string[] fresh = [.. batch.Where(c => !c.IsSameAgain).Select(c => c.Name)];
            if ((again.Length > 0 && tests.Notices(number, again, most)) || (fresh.Length > 0 && tests.NoticesAtFirst(number, fresh, most)))
                return Ended(place, isNoticed: true, batch);
        }
        return Ended(place, isNoticed: false, classes);
    }

    private static IEnumerable<IReadOnlyList<Covering>> Batches(IReadOnlyList<Covering> classes)
    {
        var most = First;
        for (var from = 0; from < classes.Count; most *= Growth)
        {
            var count = 1;
            while (from + count < classes.Count && Sum(classes.Skip(from).Take(count + 1)) <= most)
                count++;
            yield return [.. classes.Skip(from).Take(count)];
            from += count;
        }
    }

    private static TimeSpan Sum(IEnumerable<Covering> classes) => new(classes.Sum(c => c.Took.Ticks));

    private static Outcome Ended(Place place, bool isNoticed, IEnumerable<Covering> by) =>
        new(place.Id, place.Folder, isNoticed, isNoticed, string.Join(' ', by.Select(c => Recordings.Short(c.Name))));
}
