using Ohmstead.Workshop.Journal;

namespace Ohmstead.App.Demo;

/// <summary>Writes the journal of one invented unit, entry after entry, each some minutes after the last.</summary>
internal sealed class Diary
{
    private readonly List<NewEntry> entries = [];
    private readonly DrawnUnit? drawn;
    private readonly Guid unitId;
    private readonly int number;
    private DateTimeOffset at;

    /// <param name="number">Number of the unit in the demo: its ids are made of it.</param>
    /// <param name="at">When it came in.</param>
    /// <param name="drawn">What is read on it; null for a unit whose kind is not known.</param>
    public Diary(int number, DateTimeOffset at, DrawnUnit? drawn)
    {
        (this.number, this.at, this.drawn) = (number, at, drawn);
        unitId = Id(0);
    }

    /// <summary>How the bench stands for the readings that follow.</summary>
    public BenchState Bench { get; set; } = BenchState.AsSheet;

    /// <summary>All of it.</summary>
    public UnitEntries Entries => new(unitId, entries);

    /// <summary>Enters facts, three minutes apart.</summary>
    public Diary Add(params ReadOnlySpan<Fact> facts)
    {
        foreach (var fact in facts)
        {
            entries.Add(new NewEntry(Id(entries.Count + 1), at, "bench", fact));
            at = at.AddMinutes(3);
        }
        return this;
    }

    /// <summary>Takes readings.</summary>
    public Diary Read(params ReadOnlySpan<string> ids)
    {
        foreach (var id in ids)
            Add(drawn!.Read(id, Bench));
        return this;
    }

    /// <summary>Answers signs of the sheet.</summary>
    public Diary Told(params ReadOnlySpan<(string Sign, Answer Answer)> signs)
    {
        foreach (var (sign, answer) in signs)
            Add(new SignAnswered(sign, answer));
        return this;
    }

    /// <summary>Looks at parts.</summary>
    public Diary Saw(params ReadOnlySpan<(string Item, string Words, Decision Decision)> parts)
    {
        foreach (var (item, words, decision) in parts)
            Add(new ConditionNoted(item, words, decision, ""));
        return this;
    }

    /// <summary>Looks at the parts that can have something live in reach, besides the cord, and finds nothing.</summary>
    public Diary SawNothingLive() =>
        Saw(("plug", "good", Decision.Leave), ("sleeves", "good", Decision.Leave), ("case", "good", Decision.Leave));

    /// <summary>Closes a stage.</summary>
    public Diary Close(Stage stage) => Add(new StageClosed(stage, true, ""));

    /// <summary>The bench is left for so long.</summary>
    public Diary Later(TimeSpan time)
    {
        at += time;
        return this;
    }

    private Guid Id(int entry) => new(number, 0, 0, BitConverter.GetBytes((long)entry + 1));
}
