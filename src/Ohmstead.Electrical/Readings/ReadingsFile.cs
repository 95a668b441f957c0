using System.Collections.Immutable;
using System.Text.Json;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Readings;

/// <summary>Readings files as text: reading with every problem found at once.</summary>
public static class ReadingsFile
{
    /// <summary>The mark of the format.</summary>
    public const string Mark = "readings/1";

    /// <summary>Reads what was taken on a unit of this sheet.</summary>
    public static Parsed<UnitReadings> Read(string text, TypeSheet sheet)
    {
        var problems = new List<Problem>();
        if (!JsonCursor.TryOpen(text, problems, out var root))
            return new(null, problems);
        TypeSheetFile.CheckMark(root, Mark);
        if (root.Word("sheet") is var id && id.Length > 0 && id != sheet.Id)
            root.Report("sheet", $"is \"{id}\"", $"these readings belong to another sheet than \"{sheet.Id}\"");
        var supply = root.Number("supplyVolts", sheet.SupplyVolts, ReadingBounds.SupplyVolts);
        double? expected = root.Has("expectedFaults") ? root.Number("expectedFaults", 1e-6, 1000) : null;
        var meter = ReadMeter(root);
        var taken = root.RequiredList("readings").Select(r => ReadTaken(r, sheet, supply)).OfType<TakenReading>().ToImmutableArray();
        var told = root.Fields("told").Select(f => ReadSymptom(f.Name, f.At, sheet)).OfType<Symptom>().ToImmutableArray();
        return new(problems.Count == 0 ? new UnitReadings(sheet.Id, supply, expected, meter, taken, told) : null, problems);
    }

    private static Meter ReadMeter(JsonCursor root)
    {
        var errors = Meter.Usual.Errors;
        foreach (var (name, at) in root.Fields("meter"))
        {
            if (ReadingReader.QuantityOf(name) is not { } quantity)
            {
                at.Report($"\"{name}\" is no quantity", "one of ohms, insulation-ohms, ac-volts, dc-volts, ac-amps, watts");
                continue;
            }
            if (at.IsObject())
                errors = errors.SetItem(quantity, ReadError(at, quantity));
        }
        return new Meter(errors);
    }

    private static MeterError ReadError(JsonCursor at, Quantity quantity)
    {
        var usual = Meter.Usual.For(quantity);
        var (percent, floor) = (
            at.Number("percent", usual.Percent, ReadingBounds.Percent),
            at.Number("floor", usual.Floor, ReadingBounds.Floor)
        );
        if (percent == 0 && floor == 0)
            at.Report(ReadingsCheck.NoError.Wrong, ReadingsCheck.NoError.Right);
        var isAveraging = at.Flag("averaging");
        if (quantity != Quantity.AcVolts && isAveraging)
            at.Report("averaging", "stands on a quantity other than ac-volts", "leave it out");
        return new MeterError(
            percent,
            floor,
            at.Number("shared", 0, ReadingBounds.Shared),
            at.Number("leadOhms", 0, ReadingBounds.LeadOhms)
        )
        {
            IsAveraging = isAveraging,
        };
    }

    private static TakenReading? ReadTaken(JsonCursor at, TypeSheet sheet, double supplyVolts)
    {
        if (!at.IsObject())
            return null;
        var id = at.Word("id");
        if (sheet.FindReading(id) is not { } spec)
        {
            if (id.Length > 0)
                at.Report("id", $"\"{id}\" is no reading of sheet \"{sheet.Id}\"", "use an id from the sheet's readings");
            return null;
        }
        var state = ReadState(at, sheet, spec, supplyVolts);
        var isWaived = at.Has("waived") && at.At("waived").IsObject();
        var waived = isWaived ? at.At("waived").Word("by") : "";
        var blank = new TakenReading(spec, Outcome.NotTaken, 0, [], at.Word("why", ""), waived, state)
        {
            Instead = isWaived ? at.At("waived").Word("instead", "") : "",
            OwnError = at.Has("meter") && at.At("meter").IsObject() ? ReadError(at.At("meter"), spec.Quantity) : null,
        };
        if (!at.Element.TryGetProperty("value", out var value))
        {
            at.Report("value", "is missing", "a number, \"OL\", { \"jumps\": [ … ] } or null is required");
            return blank;
        }
        if (value.ValueKind != JsonValueKind.Null && waived.Length > 0)
            at.Report("waived", "stands beside a value", "a measured reading cannot be waived; only one that could not be taken");
        return value.ValueKind switch
        {
            JsonValueKind.Null => blank,
            JsonValueKind.Object => ReadJumps(at.At("value"), blank),
            JsonValueKind.String => IsOverRange(at.At("value")) ? OverRange(at, blank) : blank,
            _ => blank with { Outcome = Outcome.Value, Value = at.Number("value", ReadingBounds.Value) },
        };
    }

    private static TakenReading OverRange(JsonCursor at, TakenReading blank)
    {
        if (blank.Spec.Quantity is not (Quantity.Ohms or Quantity.InsulationOhms))
            at.Report("value", "is OL on a reading that is no resistance", "give the number, or null with why");
        return blank with { Outcome = Outcome.OverRange };
    }

    private static bool IsOverRange(JsonCursor at)
    {
        if (at.AsWord() == "OL")
            return true;
        at.Report("is no value", "a number, \"OL\", { \"jumps\": [ … ] } or null is expected");
        return false;
    }

    private static TakenReading ReadJumps(JsonCursor at, TakenReading blank)
    {
        var values = at.RequiredList("jumps", ReadingBounds.MostJumps)
            .Select(v =>
                v.Element.ValueKind == JsonValueKind.String
                    ? (IsOverRange(v) ? double.PositiveInfinity : 0)
                    : v.AsNumber(ReadingBounds.Value.Least, ReadingBounds.Value.Most)
            )
            .ToImmutableArray();
        return blank with { Outcome = Outcome.Jumps, JumpValues = values };
    }

    private static ReadingState ReadState(JsonCursor at, TypeSheet sheet, ReadingSpec spec, double supplyVolts)
    {
        var state = UnitReadings.AtLine(sheet, spec.State, supplyVolts);
        if (at.Has("supplyVolts"))
        {
            var volts = at.Number("supplyVolts", ReadingBounds.SourceVolts);
            if (state.Source is { IsDirect: false } s)
            {
                if (ReadingsCheck.NotLow(spec, s.Volts, volts) is { } high)
                    at.Report("supplyVolts", high.Wrong, high.Right);
                state = state with { Source = s with { Volts = volts } };
            }
            else
                at.Report("supplyVolts", "stands on a reading without an alternating source", "leave it out");
        }
        if (at.Has("loads"))
            state = state with { Loads = ReadingReader.Loads(at) };
        if (at.Has("celsius"))
            state = state with { Celsius = at.Number("celsius", ReadingBounds.Celsius) };
        if (at.Has("controls"))
        {
            var controls = ReadingReader.Controls(at);
            foreach (var p in ReadingChecks.ControlProblems(sheet, controls))
                at.Report($"controls.{p.Path}", p.Wrong, p.Right);
            state = state with { Controls = state.Controls.SetItems(controls) };
        }
        foreach (var p in ReadingsCheck.LoadProblems(sheet, state))
            at.Report("loads", p.Wrong, p.Right);
        return state;
    }

    private static Symptom? ReadSymptom(string id, JsonCursor at, TypeSheet sheet)
    {
        var observation = sheet.Observations.FirstOrDefault(o => o.Id == id);
        if (observation is null)
            at.Report("is no observation of the sheet", "use an id from the sheet's observations");
        var word = at.AsWord();
        if (word is not ("yes" or "no" or "unsure"))
            at.Report($"is \"{word}\"", "yes, no or unsure is expected");
        return observation is null || word is not ("yes" or "no") ? null : new Symptom(observation, word == "yes");
    }
}
