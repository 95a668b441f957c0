using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.App.Queue;
using Ohmstead.App.Web;
using Ohmstead.Electrical.Diagnosis;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Asking;
using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Kinds;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Untyped;

namespace Ohmstead.App.Components;

/// <summary>Types of the workshop's own: begun, kept as they are answered, and made into type sheets.</summary>
internal static class OwnTypes
{
    /// <summary>A type with the version of its document; null where there is none.</summary>
    public static async Task<(OwnType Type, int Version)?> ReadAsync(Bench bench, string id) =>
        await bench.Store.ReadDocumentAsync(OwnType.DocumentKind, id, CancellationToken.None) is { } document
        && OwnType.Read(document.Text) is { } type
            ? (type, document.Version)
            : null;

    /// <summary>Types that were begun and not made yet.</summary>
    public static async Task<IReadOnlyList<(string Id, OwnType Type)>> BegunAsync(Bench bench) =>
        [
            .. (await bench.Store.DocumentsAsync(OwnType.DocumentKind, CancellationToken.None))
                .Select(d => (d.Id, Type: OwnType.Read(d.Text)!))
                .Where(t => t.Type is { Made: null }),
        ];

    /// <summary>Begins a type; for a unit that has begun one, that one goes on.</summary>
    /// <returns>Where its first question is.</returns>
    public static async Task<string> BeginAsync(Bench bench, BenchUnit? unit)
    {
        if (unit is not null && (await BegunAsync(bench)).FirstOrDefault(t => t.Type.Unit == unit.Id).Id is { } begun)
            return Address(begun, KindQuestions.Plate);
        // Ids of one bench rise with time: their ends tell those of two benches apart.
        var id = "own-" + bench.NewId().ToString("N")[^16..];
        await KeepAsync(bench, id, 0, new OwnType(CarriedAnswers.Of(unit), unit?.Id, null, []));
        return Address(id, KindQuestions.Plate);
    }

    /// <summary>Where a question of a type is.</summary>
    public static string Address(string id, string question) => $"/kinds/{Uri.EscapeDataString(id)}/ask/{question}";

    /// <summary>Keeps a type; of two windows the later one counts.</summary>
    /// <returns>The version it has now.</returns>
    public static async Task<int> KeepAsync(Bench bench, string id, int version, OwnType type)
    {
        var text = OwnType.Write(type);
        while (true)
        {
            var kept = await bench.SaveDocumentAsync(OwnType.DocumentKind, id, version, text);
            version = kept.Newest.Version;
            if (kept.IsSaved)
                return version;
        }
    }

    /// <summary>Keeps what was answered, and leaves what another window made of the type meanwhile.</summary>
    public static Task<OwnType> KeepAnswersAsync(Bench bench, string id, OwnType known, KindAnswers answers) =>
        ChangeAsync(bench, id, known, newest => newest with { Answers = answers });

    /// <summary>Changes a type as it is kept now, so that what another window changed of it meanwhile stays.</summary>
    /// <param name="known">What is changed where nothing is kept.</param>
    private static async Task<OwnType> ChangeAsync(Bench bench, string id, OwnType known, Func<OwnType, OwnType> change)
    {
        while (true)
        {
            var (newest, version) = await ReadAsync(bench, id) ?? (known, 0);
            var changed = change(newest);
            var kept = await bench.SaveDocumentAsync(OwnType.DocumentKind, id, version, OwnType.Write(changed));
            if (kept.IsSaved)
                return changed;
        }
    }

    /// <summary>
    /// Makes the type sheet of the answers, with the readings of some units in it, and keeps it as a new version. The unit that waits for
    /// it becomes one of this type, with what was entered so far; units that were measured before keep their version.
    /// </summary>
    /// <param name="begun">Told of the work, so that it can be followed and stopped.</param>
    /// <returns>Where to go on; null where the answers are refused.</returns>
    public static async Task<string?> MakeAsync(
        Bench bench,
        string id,
        IReadOnlyCollection<BenchUnit> units,
        Action<Work> begun,
        CancellationToken closed
    )
    {
        if (await ReadAsync(bench, id) is not { } own)
            return null;
        var shop = await bench.ShopAsync();
        var seen = (await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, CancellationToken.None))?.Version ?? 0;
        var working = bench.Work.Begin(
            "A type sheet",
            work =>
            {
                var (kinds, asked, _) = TypeDraft.Read(own.Type.Answers, id);
                var options = new DiagnosisOptions
                {
                    Threads = Math.Max(1, Environment.ProcessorCount - 1),
                    Cancellation = work.Stopped,
                    Progress = work.Tell,
                };
                return kinds is null ? null : TypeDraft.Run(kinds, asked, units, shop, options, own.Type.Sound);
            },
            closed
        );
        begun(working);
        var drafted = await working.Answer;
        if (drafted is null)
            return null;
        if (!await SaveAsync(bench, id, own.Type, await TextAsync(bench, own.Type, drafted.Sheet), drafted.Made, seen))
            return null;
        var isBehind = own.Type.Unit is { } waiting && await CarryAsync(bench, waiting, drafted.Sheet);
        return isBehind
            ? $"/units/{own.Type.Unit}/type"
            : $"/kinds/{Uri.EscapeDataString(id)}{(own.Type.Unit is { } of ? $"?unit={of}" : "")}";
    }

    /// <summary>A drafted sheet's text, with the take-apart steps that a person has put right.</summary>
    private static async Task<string> TextAsync(Bench bench, OwnType own, TypeSheet drafted)
    {
        var text = TypeSheetFile.Write(drafted);
        return own.HasOwnSteps && await bench.SheetAsync(drafted.Id) is { } before ? TypeSteps.PutKept(text, before, drafted) : text;
    }

    /// <summary>Keeps a new version of a type's sheet with what it rests on; answers that were given meanwhile stay.</summary>
    /// <param name="over">The version that it was made from; the newest where it is left out.</param>
    public static async Task<bool> SaveAsync(Bench bench, string id, OwnType type, string sheet, MadeType made, int? over = null)
    {
        var seen = over ?? (await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, CancellationToken.None))?.Version ?? 0;
        if (seen > 0)
            await KeepVersionAsync(bench, id, seen);
        var saved = await bench.SaveDocumentAsync(Bench.SheetKind, id, seen, sheet);
        if (!saved.IsSaved)
            return false;
        var (newest, version) = await ReadAsync(bench, id) ?? (type, 0);
        await KeepAsync(
            bench,
            id,
            version,
            newest with
            {
                Answers = newest.Answers with { Title = type.Answers.Title },
                Unit = null,
                Made = made with { From = made.From with { SheetVersion = saved.Newest.Version } },
                Before = newest.Made is { } before ? newest.Before.Add(before.From) : newest.Before,
            }
        );
        return true;
    }

    /// <summary>Keeps other take-apart steps as a new version of a type's sheet.</summary>
    public static async Task<bool> KeepStepsAsync(Bench bench, string id, ImmutableArray<TakeApartStep> steps)
    {
        if (
            await ReadAsync(bench, id) is not ({ Made: { } made } own, _)
            || (await bench.Store.ReadDocumentAsync(Bench.SheetKind, id, CancellationToken.None))?.Text is not { } text
            || TypeSteps.Put(text, steps) is not { } put
        )
            return false;
        if (!await SaveAsync(bench, id, own, put, made))
            return false;
        await ChangeAsync(bench, id, own, newest => newest with { HasOwnSteps = true });
        return true;
    }

    /// <summary>Keeps sound units that came in with a file, beside those that came before.</summary>
    public static async Task KeepSoundAsync(Bench bench, string id, IReadOnlyCollection<SoundUnit> came)
    {
        if (came.Count > 0 && await ReadAsync(bench, id) is ({ } own, _))
            await ChangeAsync(bench, id, own, newest => newest with { Sound = SoundUnit.Together(newest.Sound, came) });
    }

    /// <summary>Puts what came in beside one's own type into that: a new version from the readings of both.</summary>
    /// <param name="begun">Told of the work, so that it can be followed and stopped.</param>
    /// <returns>Where to go on; null where the answers are refused.</returns>
    public static async Task<string?> PoolAsync(Bench bench, string id, OwnType came, Action<Work> begun, CancellationToken closed)
    {
        await KeepSoundAsync(bench, id, came.Sound);
        return await MakeAsync(bench, id, [.. (await TypeUnits.OfAsync(bench, id)).Where(u => u.CurrentReadings.Any())], begun, closed);
    }

    /// <summary>Units that were measured keep the version that they were measured with.</summary>
    public static async Task KeepVersionAsync(Bench bench, string id, int version)
    {
        foreach (var unit in await TypeUnits.OfAsync(bench, id))
            if (unit.SheetVersion == 0 && unit.All<ReadingEntered>().Any())
                await bench.EnterAsync(unit.Id, unit.LastNumber, "bench", new SheetKept(id, version));
    }

    /// <summary>Makes the unit one of the type.</summary>
    /// <returns>True where something that was recorded still wants its place on the sheet.</returns>
    private static async Task<bool> CarryAsync(Bench bench, Guid unitId, TypeSheet sheet)
    {
        if (await bench.ReadAsync(unitId) is not { Card.SheetId.Length: 0 } unit)
            return false;
        var card = unit.Card with { SheetId = sheet.Id };
        if (!CarryOver.IsOpen(unit))
        {
            await bench.EnterAsync(unitId, unit.LastNumber, "bench", card);
            return false;
        }
        var plain = CarryOver.Plain(unit);
        var choices = CarryOver.Choices(plain, sheet);
        var isBehind = choices.Any(c => c.Proposed.Length == 0);
        await bench.EnterAsync(
            unitId,
            unit.LastNumber,
            "bench",
            isBehind
                ? [card]
                : [card, CarryOver.Make(plain, sheet, choices.ToDictionary(c => c.From, c => c.Proposed, StringComparer.Ordinal))]
        );
        return isBehind;
    }

    /// <summary>"version 3".</summary>
    public static string Version(int version) => $"version {version.ToString(CultureInfo.InvariantCulture)}";
}
