using System.Collections.Immutable;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Asking;

/// <summary>The numbers of a drafted sheet as a person knows them: volts and watts, not turns.</summary>
public static class TypeNumbers
{
    private static readonly string[] Fields = ["ohms", "contactOhms", "amps", "volts", "seriesOhms", "leakageOhms"];

    /// <summary>Every number that can be said so, those that matter first.</summary>
    public static ImmutableArray<TypeNumber> Of(TypeSheet sheet, MadeType made) =>
        [.. made.Values.Select(v => Of(sheet, v)).OfType<TypeNumber>().OrderByDescending(n => n.IsMain)];

    private static TypeNumber? Of(TypeSheet sheet, DraftedValue value)
    {
        var parts = value.Path.Split('.');
        return parts[0] switch
        {
            "supply" => new(
                value,
                parts[1] == "volts" ? "Mains volts" : "Hertz",
                $"{ValueText.Plain(value.Value)} {(parts[1] == "volts" ? "V" : "Hz")}",
                KindQuestions.Plate,
                IsMain: true
            ),
            "rating" => new(value, "Plate watts", $"{ValueText.Plain(value.Value)} W", KindQuestions.Plate, IsMain: true),
            "cores" => OfCore(sheet, value, parts),
            "elements" => OfPart(sheet, value, parts),
            _ => null,
        };
    }

    private static TypeNumber? OfCore(TypeSheet sheet, DraftedValue value, string[] parts)
    {
        if (sheet.Cores.FirstOrDefault(c => c.Id == parts[1]) is not { } core || parts[1] != "core")
            return null;
        var at = $" at {ValueText.Plain(sheet.SupplyVolts)} V";
        if (parts[2] == "lossOhms")
            return new(
                value,
                "Core loss" + at,
                ValueText.Of(sheet.SupplyVolts * sheet.SupplyVolts / core.LossOhms, Quantity.Watts),
                "",
                IsMain: true
            );
        return parts[2] == "excitation" && !core.Excitation.IsDefaultOrEmpty
            ? new(
                value,
                "No-load amps" + at,
                ValueText.Of(core.Excitation.MinBy(x => Math.Abs(x.Volts - sheet.SupplyVolts)).Amps, Quantity.AcAmps),
                "",
                IsMain: true
            )
            : null;
    }

    private static TypeNumber? OfPart(TypeSheet sheet, DraftedValue value, string[] parts)
    {
        var (id, field) = (parts[1], parts[^1]);
        if (field is "fromTurn" or "toTurn")
            return OfSlider(sheet, value, id, field == "fromTurn");
        var element = sheet.Elements.FirstOrDefault(e => e.Id == id);
        if (element is Winding winding && field == "turn")
        {
            var tap = winding.Taps.FirstOrDefault(t => t.To == parts[2]);
            var post = "post-" + parts[2]["tap-".Length..];
            var isPost = sheet.Titles.ContainsKey(post);
            return tap is null
                ? null
                : new(
                    value,
                    $"{PartNames.Title(sheet, isPost ? post : parts[2])}, no load",
                    Volts(sheet, tap.Turn),
                    KindQuestions.Fixed,
                    isPost
                );
        }
        if (element is Winding { Core: "core" } coil && field == "turns" && id != "primary")
            return coil.Taps.Length + coil.Sliders.Length > 0
                ? null
                : new(value, $"{PartNames.Title(sheet, id)}, no load", Volts(sheet, coil.Turns), "", IsMain: true);
        if (!Fields.Contains(field, StringComparer.Ordinal) || element?.Kind == ElementKind.Insulation)
            return null;
        var isMain = element is null or Winding or Lamp || element.Kind is ElementKind.Breaker or ElementKind.Resistor;
        return new(value, $"{PartNames.Title(sheet, id)}{Said(field)}", Figure(field, value.Value), "", isMain) { CanPut = true };
    }

    private static TypeNumber? OfSlider(TypeSheet sheet, DraftedValue value, string id, bool isLow)
    {
        if (sheet.Elements.SelectMany(e => e is Winding w ? w.Sliders : []).FirstOrDefault(s => s.Id == id) is not { } slider)
            return null;
        var name = $"{Sentences.Large(PartNames.Control(sheet, slider.Control))}, {(isLow ? "low" : "full")}";
        return new(value, name, Volts(sheet, isLow ? slider.FromTurn : slider.ToTurn), PostsOf(sheet, slider.Control), IsMain: true);
    }

    /// <summary>No-load volts of turns, at the plate's volts.</summary>
    private static string Volts(TypeSheet sheet, double turns) =>
        sheet.Elements.FirstOrDefault(e => e.Id == "primary") is Winding { Turns: > 0 } primary
            ? ValueText.Of(turns / primary.Turns * sheet.SupplyVolts, Quantity.AcVolts)
            : "";

    /// <summary>The question at which a throttle's volts are said: they follow each other as on the sheet, those with steps among them.</summary>
    private static string PostsOf(TypeSheet sheet, string control) =>
        KindQuestions.Posts(
            Math.Max(
                0,
                sheet.Controls.Select(c => c.Id).Where(id => id.StartsWith("throttle-", StringComparison.Ordinal)).ToList().IndexOf(control)
            )
        );

    private static string Said(string field) =>
        field switch
        {
            "ohms" => ", ohms",
            "contactOhms" => ", contact",
            "seriesOhms" => ", forward ohms",
            "leakageOhms" => ", back ohms",
            _ => $", {field}",
        };

    private static string Figure(string field, double value) =>
        ValueText.Of(
            value,
            field switch
            {
                "amps" => Quantity.AcAmps,
                "volts" => Quantity.AcVolts,
                _ => Quantity.Ohms,
            }
        );
}

/// <summary>A number of a drafted sheet, as it is shown.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Figure">The number with its unit.</param>
/// <param name="Question">The question at which it is changed; empty where it is no answer.</param>
/// <param name="IsMain">True for what a person measures or reads on the plate.</param>
public sealed record TypeNumber(DraftedValue Value, string Name, string Figure, string Question, bool IsMain)
{
    /// <summary>True where another number can be put in its place.</summary>
    public bool CanPut { get; init; }

    /// <summary>Where it comes from.</summary>
    public string From =>
        Value.Origin switch
        {
            Origin.Stated => Value.Path.StartsWith("elements.", StringComparison.Ordinal) ? "You said so" : "Plate",
            Origin.Measured => "Measured",
            Origin.Derived => "Worked out",
            _ => "Assumed",
        };

    /// <summary>How far the type may be from it, in words; empty where there is no doubt.</summary>
    public string Doubt =>
        Value.RelativeError > 0 ? $"±\u00a0{ValueText.Plain(Math.Max(1, Math.Round(100 * Value.RelativeError)))}\u00a0%" : "";
}
