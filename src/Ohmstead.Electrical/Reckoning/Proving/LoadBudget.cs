using System.Collections.Immutable;

namespace Ohmstead.Electrical.Reckoning.Proving;

/// <summary><c>load-budget</c>: what the unit can run, with which fuse and wire (docs/methods/proving.md).</summary>
/// <param name="UsableAmps">Of the whole unit, for hours.</param>
/// <param name="Posts">Its posts.</param>
/// <param name="Consumers">What hangs on them.</param>
/// <param name="Wanted">What might be added, one of each kind at a time.</param>
/// <param name="ReservePercent">Of the usable amps, kept free when something is added.</param>
/// <param name="RatingsAmps">Fuses to be had, rising.</param>
/// <param name="CarriesAmps">Amps that a gauge carries.</param>
public sealed record LoadBudget(
    double UsableAmps,
    ImmutableArray<LoadPost> Posts,
    ImmutableArray<Consumer> Consumers,
    ImmutableArray<Consumer> Wanted,
    double ReservePercent,
    ImmutableArray<double> RatingsAmps,
    ImmutableSortedDictionary<int, double> CarriesAmps
) : Question
{
    /// <summary>Amps by word; common practice, no source.</summary>
    public static ImmutableSortedDictionary<string, double> UsualAmps { get; } =
        new Dictionary<string, double>
        {
            ["motor"] = 1.25,
            ["older motor"] = 1.75,
            ["lamp"] = 0.2,
            ["smoke"] = 0.6,
            ["whistle"] = 1.25,
            ["lit car"] = 0.4,
            ["coil"] = 0.6,
        }.ToImmutableSortedDictionary(StringComparer.Ordinal);

    /// <summary>Of the usable amps, kept free when something is added [%]; common practice, no source.</summary>
    public const double UsualReservePercent = 10;

    /// <summary>Fuses to be had [A], rising.</summary>
    public static ImmutableArray<double> UsualRatings { get; } = [1, 2, 3, 4, 5, 7.5, 10];

    /// <summary>A fuse is at least so many times the load.</summary>
    private const double FuseShare = 1.2;

    /// <summary>Sums of decimal figures err in the sixteenth digit; at a limit they count as on it.</summary>
    private const double Hair = 1e-9;

    /// <summary>Reads its fields.</summary>
    public static LoadBudget Read(QuestionFields fields)
    {
        var usable = fields.NeededPart("unit", "{ \"usableAmps\": … }")?.Number("usableAmps", NumberRange.Positive) ?? 1;
        var taken = new HashSet<string>(StringComparer.Ordinal);
        var posts = fields.List("posts", p => LoadPost.Read(p, taken, usable), most: 200);
        var words = UsualAmps;
        foreach (var (name, at) in fields.Named("usualAmps"))
            words = words.SetItem(name, at.AsNumber(NumberRange.NotNegative));
        Consumer Read(QuestionFields c, bool isWanted) => ReadConsumer(c, posts, taken, words, isWanted);
        return new(
            usable,
            posts,
            fields.List("consumers", c => Read(c, false), least: 0),
            fields.OptionalList("wanted", c => Read(c, true)),
            fields.Number("reservePercent", NumberRange.Percent, UsualReservePercent),
            [.. fields.Numbers("ratingsAmps", NumberRange.Positive, UsualRatings).Order()],
            LoadWire.ReadAmps(fields)
        );
    }

    private static Consumer ReadConsumer(
        QuestionFields at,
        ImmutableArray<LoadPost> posts,
        HashSet<string> known,
        ImmutableSortedDictionary<string, double> words,
        bool isWanted
    )
    {
        var (what, post) = (at.Word("what"), at.KnownId("post", known, "post"));
        var volts = posts.FirstOrDefault(p => p.Id == post)?.Volts ?? 1;
        // What is to be added divides what is left: it must draw something.
        var range = isWanted ? NumberRange.Positive : NumberRange.NotNegative;
        var (amps, watts) = (at.Optional("amps", range), at.Optional("watts", range));
        if (amps is null && watts is null && what.Length > 0 && !words.ContainsKey(what))
            at.Report("what", $"\"{what}\" is not in the list", $"one of {string.Join(", ", words.Keys)}, or its amps or watts beside it");
        var each = amps ?? watts / volts ?? words.GetValueOrDefault(what, 1);
        return isWanted
            ? new(what, 1, post, each, 100)
            : new(what, at.Whole("count", 0, 100_000, 1), post, each, at.Number("onPercent", NumberRange.Percent, 100));
    }

    /// <inheritdoc/>
    public override LoadBudgetAnswer Answer()
    {
        var posts = Posts.Select(OfPost).ToImmutableArray();
        var total = posts.Sum(p => p.Amps);
        var used = 100 * total / UsableAmps;
        return new(
            posts,
            total,
            posts.Sum(p => p.Watts),
            used,
            IsWithin(used) && posts.All(p => p.Within),
            [.. Wanted.Select(w => CanAdd(w, total, posts))]
        )
        {
            Words = LoadWords.Of(posts, total, UsableAmps),
            Cautions = LoadWords.Habits,
            Outside = ["The amps are what each draws on average. A start or a stalled motor draws more for a moment."],
        };
    }

    /// <summary>True while the unit itself is not asked for more than its usable amps, whatever its posts may give.</summary>
    /// <param name="usedPercent">Of the usable amps [%].</param>
    public static bool IsWithin(double usedPercent) => usedPercent <= 100 * (1 + Hair);

    private PostLoad OfPost(LoadPost post)
    {
        var amps = Consumers.Where(c => c.Post == post.Id).Sum(c => c.AllAmps);
        double? fuse =
            amps > 0
                ? RatingsAmps.Where(r => r >= FuseShare * amps * (1 - Hair) && r <= post.MostAmps).Select(r => (double?)r).FirstOrDefault()
                : null;
        var carried = fuse ?? amps;
        var (inWire, inTrack) = (post.Wire?.DropVolts(amps, post.Wire.GaugeAwg), post.Track?.DropVolts(amps));
        int? gauge = post.Wire is not { } wire
            ? null
            : LoadWire
                .Gauges.Where(g =>
                    wire.DropVolts(amps, g) <= post.MostDropPercent / 100 * post.Volts * (1 + Hair)
                    && LoadWire.Carries(CarriesAmps, g) >= carried
                )
                .Select(g => (int?)g)
                .FirstOrDefault();
        return new(
            post.Id,
            amps,
            amps * post.Volts,
            amps <= post.MostAmps * (1 + Hair),
            fuse,
            inWire,
            gauge,
            post.Wire is null ? null : LoadWire.Carries(CarriesAmps, post.Wire.GaugeAwg) < carried,
            inTrack,
            post.Volts - (post.SourceOhms * amps) - (inWire ?? 0) - (inTrack ?? 0)
        );
    }

    private AddedLoad CanAdd(Consumer wanted, double total, ImmutableArray<PostLoad> posts)
    {
        var post = Posts.First(p => p.Id == wanted.Post);
        var left = Math.Min((UsableAmps * (1 - (ReservePercent / 100))) - total, post.MostAmps - posts.First(p => p.Id == post.Id).Amps);
        return new(wanted.What, wanted.Post, (long)Math.Clamp(Math.Floor((left / wanted.Amps) + Hair), 0, 1e9));
    }
}

/// <summary>What <c>load-budget</c> answers.</summary>
/// <param name="Posts">Each post.</param>
/// <param name="TotalAmps">Of all.</param>
/// <param name="TotalWatts">Of all.</param>
/// <param name="UsedPercent">Of the usable amps.</param>
/// <param name="Fits">The unit and every post.</param>
/// <param name="CanAdd">How many more of each, alone.</param>
public sealed record LoadBudgetAnswer(
    ImmutableArray<PostLoad> Posts,
    double TotalAmps,
    double TotalWatts,
    double UsedPercent,
    bool Fits,
    ImmutableArray<AddedLoad> CanAdd
) : Answer;

/// <summary>A post with its load; what concerns wire or track is null where there is none.</summary>
/// <param name="Id">The post.</param>
/// <param name="Amps">On it.</param>
/// <param name="Watts">At its volts.</param>
/// <param name="Within">What it may give.</param>
/// <param name="FuseAmps">The fuse to fit; null where none fits.</param>
/// <param name="WireDropVolts">Lost in the wire that is there.</param>
/// <param name="GaugeAwg">The wire to fit; null where none of the list is enough.</param>
/// <param name="WireTooThin">The wire there carries less than the fuse lets through.</param>
/// <param name="TrackDropVolts">Lost in the rails, half-way between feeders.</param>
/// <param name="VoltsAtTrain">What is left.</param>
public sealed record PostLoad(
    string Id,
    double Amps,
    double Watts,
    bool Within,
    double? FuseAmps,
    double? WireDropVolts,
    int? GaugeAwg,
    bool? WireTooThin,
    double? TrackDropVolts,
    double VoltsAtTrain
);

/// <summary>How many more of it.</summary>
public sealed record AddedLoad(string What, string Post, long Count);
