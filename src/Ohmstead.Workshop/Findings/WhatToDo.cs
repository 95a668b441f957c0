using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using Ohmstead.Electrical.Faults;
using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Findings;

/// <summary>The table of what to do about each fault (<c>what-to-do.json</c>), read once.</summary>
public static class WhatToDo
{
    /// <summary>The kind under which wiring mistakes are listed.</summary>
    public const string MistakeKind = "wiring";

    private static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web)
    {
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    private static readonly Lazy<ImmutableArray<Remedy>> Read = new(() =>
    {
        using var file = typeof(WhatToDo).Assembly.GetManifestResourceStream("what-to-do.json")!;
        return [.. JsonSerializer.Deserialize<Row[]>(file, Options)!.Select(r => r.ToRemedy())];
    });

    /// <summary>Every row, in the order of the file.</summary>
    public static ImmutableArray<Remedy> Rows => Read.Value;

    /// <summary>The row of a fault: that of the part's role, else that of any part of its kind.</summary>
    public static Remedy For(TypeSheet sheet, FaultMode fault)
    {
        var role = PartRole.Of(sheet, fault);
        var rows = Rows.Where(r => r.Kind == fault.Kind.Word() && r.Mode == fault.Mode).ToList();
        return rows.Find(r => r.Role == role) ?? rows.First(r => r.Role.Length == 0);
    }

    /// <summary>The row of a wiring mistake, by its sort: the word before the colon of its id (docs/formats.md).</summary>
    public static Remedy ForMistake(string sort) => Rows.First(r => r.Kind == MistakeKind && r.Mode == sort);

    private sealed record Row(
        string Kind,
        string Mode,
        string? Role,
        string Headline,
        string Means,
        string Notices,
        string Act,
        ImmutableArray<string> Do,
        string WorkedWhen,
        ImmutableArray<ProofReading> Again,
        int[] Minutes,
        string? TimeNote,
        Part[] Parts,
        string? Caution,
        string? StopWhen,
        string[]? From
    )
    {
        public Remedy ToRemedy() =>
            new(
                Kind,
                Mode,
                Role ?? "",
                Headline,
                Means,
                Notices,
                Act,
                Do,
                WorkedWhen,
                Again,
                (Minutes[0], Minutes[1]),
                [.. Parts.Select(p => (p.Name, p.Price))]
            )
            {
                Waits = TimeNote ?? "",
                Caution = Caution ?? "",
                StopWhen = StopWhen ?? "",
                From = [.. From ?? []],
            };
    }

    private sealed record Part(string Name, double Price);
}
