using System.Collections.Immutable;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Wiring;

namespace Ohmstead.Workshop.Plans;

/// <summary>What is measured or estimated on a part to decide about it: fields as typed, and what they come to.</summary>
/// <param name="Fields">In the order in which they are asked for.</param>
public abstract record PartMeasure(ImmutableArray<MeasureField> Fields)
{
    /// <summary>The same with one field typed anew.</summary>
    public PartMeasure With(string name, string text) =>
        this with
        {
            Fields = [.. Fields.Select(f => f.Name == name ? f with { Text = text } : f)],
        };

    /// <summary>What is wrong with what was typed, a line a field; none where an answer can be worked out.</summary>
    public ImmutableArray<string> Problems =>
        [
            .. Fields
                .Where(f => f.Text.Trim().Length > 0 || !f.IsOptional)
                .Select(f => (f.Label, ShopEdit.Number(f.Text, f.Least, f.Most).Problem))
                .Where(f => f.Problem.Length > 0)
                .Select(f => $"{f.Label}: {f.Problem}"),
            .. Beyond(),
        ];

    /// <summary>What it comes to; null while something typed is wrong.</summary>
    public MeasureVerdict? Verdict() => Problems.IsEmpty ? Answer() : null;

    /// <summary>What is measured on a part of this sort; null where nothing is.</summary>
    /// <param name="own">The sheet with this unit's changes.</param>
    /// <param name="about">The part.</param>
    /// <param name="contactOhms">What the findings estimate of a roller's contact; null where they do not.</param>
    public static PartMeasure? For(TypeSheet own, string about, double? contactOhms = null)
    {
        if (own.Sliders.FirstOrDefault(s => s.Id == about) is { } slider)
            return RollerMeasure.Of(own, slider, contactOhms);
        return own.Elements.FirstOrDefault(e => e.Id == about) switch
        {
            Lamp lamp => LampMeasure.Of(lamp),
            Resistive { Kind: ElementKind.Resistor } resistor => WireMeasure.Of(resistor),
            { Kind: ElementKind.Wire } wire when LiveSide.Plug(own).Any(t => t == wire.From || t == wire.To) => CordMeasure.Of(own),
            null when about == "cord" => CordMeasure.Of(own),
            _ => null,
        };
    }

    /// <summary>What is wrong between one field and another.</summary>
    protected virtual IEnumerable<string> Beyond() => [];

    /// <summary>What it comes to, all fields being numbers in their ranges.</summary>
    protected abstract MeasureVerdict Answer();

    /// <summary>A field's number.</summary>
    protected double Number(string name) => Optional(name) ?? 0;

    /// <summary>A field's number; null where it was left empty.</summary>
    protected double? Optional(string name) =>
        Fields.First(f => f.Name == name) is var field && field.Text.Trim().Length > 0
            ? ShopEdit.Number(field.Text, field.Least, field.Most).Value
            : null;

    /// <summary>A verdict from an answer of the command line's reckoning, with its hazards and limits.</summary>
    private protected static MeasureVerdict From(
        Electrical.Reckoning.Answer answer,
        DecidedAct act,
        string why,
        params ReadOnlySpan<(string Name, string Value)> rows
    ) => new(act, why, [.. rows], answer.Words, answer.Cautions, answer.Outside);
}

/// <summary>A number to type.</summary>
/// <param name="Name">Unique in its form.</param>
/// <param name="Note">Its unit.</param>
/// <param name="Text">As it stands.</param>
public sealed record MeasureField(string Name, string Label, string Note, double Least, double Most, string Text)
{
    /// <summary>True where it may be left empty.</summary>
    public bool IsOptional { get; init; }
}

/// <summary>What a measured part comes to.</summary>
/// <param name="Act">What it speaks for.</param>
/// <param name="Why">In a few words, to be kept with the decision.</param>
/// <param name="Rows">The figures behind it.</param>
/// <param name="Words">What it comes to, in sentences.</param>
/// <param name="Cautions">The hazards.</param>
/// <param name="Outside">What it leaves out.</param>
public sealed record MeasureVerdict(
    DecidedAct Act,
    string Why,
    ImmutableArray<(string Name, string Value)> Rows,
    ImmutableArray<string> Words,
    ImmutableArray<string> Cautions,
    ImmutableArray<string> Outside
);
