using System.Collections.Immutable;
using System.Text.Json.Nodes;
using Ohmstead.Electrical.Fitting;
using Ohmstead.Electrical.Outlines;
using Ohmstead.Electrical.Readings;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Electrical.Drafting;

/// <summary>Puts the numbers that units gave into a drafted sheet, with what is left of the doubt about them.</summary>
internal static class MeasuredSheet
{
    public static (TypeSheet Sheet, ImmutableArray<DraftedValue> Values) Of(
        OutlineKind kind,
        KindMedians medians,
        ImmutableArray<UnitReadings> units
    )
    {
        var document = TypeSheetFile.JsonOf(kind.Sheet);
        var changed = new Dictionary<string, DraftedValue>(StringComparer.Ordinal);
        for (var p = 0; p < medians.Model.Parameters.Length; p++)
            if (medians.Model.Parameters[p].KindSigma > 0)
                Put(document, kind.Sheet, medians, p, changed);
        for (var k = 0; k < medians.Shapes.Length; k++)
            PutTurn(document, medians, k, changed);
        foreach (var p in medians.Shapes.Select(s => s.Winding).Distinct())
            Lengthen(document, medians, p);
        // By these a sheet knows the unit that it came from: it is for the next one.
        document["draftedFrom"] = new JsonArray([.. units.Select(u => JsonValue.Create(ReadingsMark.Of(u)))]);
        ImmutableArray<DraftedValue> values =
        [
            .. kind.Values.Select(v =>
                !changed.TryGetValue(v.Path, out var now) ? v
                : now.Origin == Origin.Measured ? now
                : now with { Origin = v.Origin, From = [] }
            ),
        ];
        return (TypeSheetFile.Read(document.ToJsonString()).Required, values);
    }

    private static void Put(JsonObject document, TypeSheet sheet, KindMedians medians, int p, Dictionary<string, DraftedValue> changed)
    {
        var parameter = medians.Model.Parameters[p];
        var factor = Math.Exp(medians.Median[p] * parameter.Sigma);
        var (id, field) = (parameter.Path.Split('.')[1], parameter.Path.Split('.')[2]);
        var part = PartOf(document, id);
        int[] own = [.. Enumerable.Range(0, medians.Shapes.Length).Where(k => medians.Shapes[k].Winding == p)];
        // Of a winding with taps, what counts is how sure its taps are.
        var error =
            own.Length > 0 ? Math.Sqrt(own.Average(k => Math.Pow(medians.TurnErrorOf(k), 2))) : medians.ErrorOf(p) * parameter.Sigma;
        var value = DraftParts.Round(parameter.Nominal * factor);
        if (field == "excitation")
            part["excitation"] = new JsonArray([
                .. sheet.Cores.Single(c => c.Id == id).Excitation.Select(x => new JsonArray(x.Volts, DraftParts.Round(x.Amps * factor))),
            ]);
        else
            part[field] = value;
        DraftParts.Spread(part, field, parameter.UnitSigma, error);
        var isMeasured = own.Length > 0 ? own.Count(medians.IsTurnMeasured) * 2 >= own.Length : medians.IsMeasured(p);
        changed[parameter.Path] = new(
            parameter.Path,
            value,
            error,
            isMeasured ? Origin.Measured : Origin.Assumed,
            isMeasured ? medians.SourcesOf(p) : []
        );
    }

    private static void PutTurn(JsonObject document, KindMedians medians, int k, Dictionary<string, DraftedValue> changed)
    {
        var path = medians.Shapes[k].Path;
        var (id, field) = (path.Split('.')[1], path.Split('.')[2]);
        var turn = DraftParts.Round(medians.TurnOf(k));
        // A tap goes by elements.WINDING.TERMINAL.turn.
        if (path.EndsWith(".turn", StringComparison.Ordinal))
            WindingOf(document, medians.Shapes[k].Winding, medians)["taps"]!
                .AsArray()
                .Single(t => path == $"elements.{id}.{t!["to"]!.GetValue<string>()}.turn")!["turn"] = turn;
        else
            PartOf(document, id)[field] = turn;
        changed[path] = new(
            path,
            turn,
            medians.TurnErrorOf(k),
            medians.IsTurnMeasured(k) ? Origin.Measured : Origin.Assumed,
            medians.IsTurnMeasured(k) ? medians.SourcesOfTurn(k) : []
        );
    }

    /// <summary>A winding reaches to its highest tap.</summary>
    private static void Lengthen(JsonObject document, KindMedians medians, int p)
    {
        var winding = WindingOf(document, p, medians);
        var most = Enumerable
            .Range(0, medians.Shapes.Length)
            .Where(k => medians.Shapes[k].Winding == p)
            .Max(k => DraftParts.Round(medians.TurnOf(k)));
        if (winding["turns"]!.GetValue<double>() < most)
            winding["turns"] = most;
    }

    private static JsonObject WindingOf(JsonObject document, int p, KindMedians medians) =>
        PartOf(document, medians.Model.Sheet.Elements[medians.Model.Parameters[p].Index].Id);

    /// <summary>An element, slider or core by its id.</summary>
    private static JsonObject PartOf(JsonObject document, string id)
    {
        var elements = document["elements"]!.AsArray().Select(e => e!.AsObject()).ToList();
        var all = elements
            .Concat(elements.SelectMany(e => (e["sliders"] as JsonArray ?? []).Select(s => s!.AsObject())))
            .Concat(document["cores"]!.AsArray().Select(c => c!.AsObject()));
        return all.First(e => e["id"]!.GetValue<string>() == id);
    }
}
