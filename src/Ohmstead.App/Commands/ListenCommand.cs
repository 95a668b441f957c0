using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using Ohmstead.Workshop.Listening;

namespace Ohmstead.App.Commands;

/// <summary><c>listen WAV…</c>: what a recording of the hum says.</summary>
internal static class ListenCommand
{
    public static Command Make()
    {
        var files = new Argument<string[]>("WAV") { Description = "Recordings, 4 seconds or more each.", Arity = ArgumentArity.OneOrMore };
        var labels = new Option<string?>("--as")
        {
            Description = "What each one is, commas between; then they are compared with the first.",
            HelpName = "LABEL,LABEL",
        };
        var json = CommonOptions.Json();
        var verb = new Verb(
            "listen",
            "Listen to a recording of the hum.",
            concernsMains: false,
            "ohmstead listen hum.wav",
            "ohmstead listen a.wav b.wav c.wav --as idle,load,lifted --json"
        )
        {
            files,
            labels,
            json,
        };
        verb.SetAction(parsed => Run(parsed.GetValue(files)!, parsed.GetValue(labels), parsed.GetValue(json)));
        return verb;
    }

    private static int Run(string[] files, string? labels, bool asJson)
    {
        var names = labels?.Split(',', StringSplitOptions.TrimEntries);
        if (names is not null && (names.Length != files.Length || names.Any(n => n.Length == 0)))
            throw new RefusedInput(
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"--as: has {names.Length} labels for {files.Length} files; give one for each, commas between"
                )
            );
        var heard = files.Select(f => (File: f, Heard: Listen(f))).ToList();
        var wrong = heard.Where(h => h.Heard.Recording is null).Select(h => $"{h.File}: {h.Heard.Word}; {h.Heard.Right}").ToList();
        if (wrong.Count > 0)
            throw new RefusedInput(wrong);
        var recordings = heard.Select(h => (h.File, Recording: h.Heard.Recording!)).ToList();
        var compared = names is null ? null : HumComparison.Of([.. recordings.Select((r, n) => (names[n], r.Recording))]);
        if (asJson)
            Output.Print(Json(recordings, compared));
        else
            Show(recordings, compared);
        return ExitCode.Done;
    }

    private static HumHeard Listen(string path)
    {
        if (path.Length == 0 || path.Contains('\0', StringComparison.Ordinal) || !File.Exists(path))
            return new(null, Directory.Exists(path) ? "is a folder" : "there is no such file", "give the path of a WAV file");
        return HumRecording.Listen(() => new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite, 1 << 16));
    }

    private static JsonObject Json(List<(string File, HumRecording Recording)> recordings, HumComparison? compared)
    {
        var all = new JsonObject
        {
            ["recordings"] = new JsonArray([
                .. recordings.Select(r => new JsonObject
                {
                    ["file"] = r.File,
                    ["seconds"] = r.Recording.Seconds,
                    ["supplyHertz"] = r.Recording.SupplyHertz,
                    ["foundHertz"] = r.Recording.FoundHertz,
                    ["lines"] = new JsonArray([.. r.Recording.Lines.Select(Line)]),
                    ["heardDb"] = r.Recording.HeardDb,
                    ["verdict"] = Output.Words(r.Recording.Verdict),
                    ["words"] = Output.Words(r.Recording.Words),
                }),
            ]),
        };
        if (compared is null)
            return all;
        all["compare"] = new JsonArray([
            .. compared.Changes.Select(c => new JsonObject
            {
                ["from"] = c.From,
                ["to"] = c.To,
                ["changeDb"] = c.ChangeDb,
                ["heardChangeDb"] = c.HeardChangeDb,
                ["words"] = c.Words,
            }),
        ]);
        all["gainMoved"] = compared.GainMoved;
        return all;
    }

    private static JsonObject Line(HumLine line) =>
        new()
        {
            ["harmonic"] = line.Harmonic,
            ["hertz"] = line.Hertz,
            ["levelDb"] = line.LevelDb,
            ["aboveFloorDb"] = line.AboveFloorDb,
        };

    private static void Show(List<(string File, HumRecording Recording)> recordings, HumComparison? compared)
    {
        foreach (var (file, recording) in recordings)
        {
            Console.WriteLine(Style.Heading(Path.GetFileName(file)));
            Console.WriteLine(
                recording.FoundHertz is { } found
                    ? string.Create(CultureInfo.InvariantCulture, $"{recording.Seconds:0.0} s. Line frequency {found:0.00} Hz.")
                    : string.Create(CultureInfo.InvariantCulture, $"{recording.Seconds:0.0} s.")
            );
            foreach (var sentence in recording.Words)
                Console.WriteLine(Shown.Wrapped(sentence, 0));
            if (recording.Lines.Length > 0)
                Console.WriteLine(Style.Heading("  line     Hz   level, dB   above the noise, dB"));
            foreach (var line in recording.Lines)
                Console.WriteLine(
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"  {line.Harmonic, 4} {line.Hertz, 7:0.0} {line.LevelDb, 10:0.0} {line.AboveFloorDb, 16:0.0}"
                    )
                );
            Console.WriteLine();
        }
        if (compared is null)
            return;
        foreach (var change in compared.Changes)
            Console.WriteLine(
                Shown.Wrapped(
                    change.ChangeDb is { } db
                        ? string.Create(
                            CultureInfo.InvariantCulture,
                            $"{change.To}, against {change.From}: {db:+0.0;-0.0;0.0} dB. {change.Words}"
                        )
                        : $"{change.To}, against {change.From}: {change.Words}",
                    0
                )
            );
        if (compared.GainMoved)
            Console.WriteLine(compared.Doubt);
    }
}
