using System.Globalization;
using Ohmstead.Electrical.Outlines;

namespace Ohmstead.Workshop.Asking;

/// <summary>The blocks of an outline, answer by answer.</summary>
internal sealed class AnswerBlocks(KindAnswers a)
{
    /// <summary>Windings on which no throttle runs, in the order of their first posts.</summary>
    private static readonly string[] FixedWindings = ["fixed", "other", "further"];

    /// <summary>The winding behind throttles that give DC, beside others: no post tells what it starts at.</summary>
    private const string BehindDirect = "track";

    private static readonly string[] SeveralWindings = ["first", "second", "third", "fourth"];
    private readonly List<OutlineFields> blocks = [];
    private readonly List<string> questions = [],
        ofKind = [];
    private readonly List<AnswerProblem> problems = [];

    private IEnumerable<int> Throttles => Enumerable.Range(0, a.ThrottleCount);

    private IEnumerable<PostAnswer> Fixed => a.FixedPosts;

    public AskedOutline Whole(string id)
    {
        var outline = new OutlineFields
        {
            ["ohmstead"] = OutlineFile.Mark,
            ["id"] = id,
            ["title"] = KindTitle.Of(a),
            ["plate"] = AnswerOutline.Plate(a, Figure),
        };
        problems.AddRange(PostsOnce.Of(a));
        var windings = Windings();
        foreach (var n in Throttles)
            Throttle(n, windings);
        foreach (var post in Fixed.Where(p => p.FedFrom.Trim().Length > 0))
            Add(
                KindQuestions.Fixed,
                new()
                {
                    ["block"] = "rectifier",
                    ["kind"] = "half",
                    ["post"] = PostMark.Of(post.Post),
                    ["from"] = PostMark.Of(post.FedFrom),
                }
            );
        Levers();
        Breaker();
        Lamp(windings);
        outline["blocks"] = blocks;
        return new(outline.Text, [.. questions], [.. problems]) { OfKind = [.. ofKind] };
    }

    /// <param name="kind">The question that says which sort of block it is, where that is another one.</param>
    private void Add(string question, OutlineFields block, string kind = "")
    {
        blocks.Add(block);
        questions.Add(question);
        ofKind.Add(kind.Length > 0 ? kind : question);
    }

    /// <summary>The post that a throttle's winding starts at; empty where DC comes out.</summary>
    private string StartOf(int n) => a.IsDirectAt(n) ? "" : PostMark.Return(a.Throttle(n).Return);

    private object Figure(string question, string typed)
    {
        var (figure, problem) = TypedFigure.Read(typed);
        if (problem.Length > 0)
            problems.Add(new(question, problem));
        return figure ?? KindAnswers.Unknown;
    }

    /// <summary>A winding for each post that others are counted from; by that post the id of each.</summary>
    private Dictionary<string, string> Windings()
    {
        var ids = new Dictionary<string, string>(StringComparer.OrdinalIgnoreCase);
        string[] run = [.. Throttles.Select(StartOf).Distinct(StringComparer.OrdinalIgnoreCase)];
        foreach (var (from, n) in run.Select((r, n) => (r, n)))
            Winding(
                ids,
                from,
                run.Length == 1 ? "main"
                    : from.Length == 0 ? BehindDirect
                    : SeveralWindings[n]
            );
        var free = 0;
        foreach (var from in Fixed.Where(p => p.FedFrom.Trim().Length == 0).Select(p => PostMark.Return(p.Return)))
            if (!ids.ContainsKey(from))
                Winding(ids, from, free < FixedWindings.Length ? FixedWindings[free++] : $"fixed-{Number(++free)}");
        return ids;
    }

    private void Winding(Dictionary<string, string> ids, string from, string id)
    {
        ids[from] = id;
        var block = new OutlineFields { ["block"] = "winding", ["id"] = id };
        if (from.Length > 0)
            block["from"] = from;
        var posts = new OutlineFields();
        foreach (var post in Fixed.Where(p => p.FedFrom.Trim().Length == 0 && PostMark.IsSame(PostMark.Return(p.Return), from)))
            if (PostMark.Of(post.Post) is { Length: > 0 } mark && !posts.ContainsKey(mark))
                posts[mark] = Figure(KindQuestions.Fixed, post.Volts);
        if (posts.Count > 0)
            block["posts"] = posts;
        int[] on = [.. Throttles.Where(n => PostMark.IsSame(StartOf(n), from))];
        // Whichever throttle's wire the volts were said at.
        var first = on.FirstOrDefault(n => IsWire(n) && a.At(n).Full.Trim().Length > 0, on.FirstOrDefault(-1));
        var question = first < 0 ? KindQuestions.Fixed : KindQuestions.Posts(first);
        if (first >= 0 && IsWire(first))
            block["volts"] = Figure(question, a.At(first).Full);
        Add(question, block);
    }

    private bool IsWire(int n) => a.At(n).Runs == "rheostat";

    private void Throttle(int n, Dictionary<string, string> windings)
    {
        var (said, question, id) = (a.At(n), KindQuestions.Posts(n), PostMark.Throttle(a, n));
        var block = new OutlineFields
        {
            ["block"] = "throttle",
            ["id"] = id,
            ["on"] = windings[StartOf(n)],
            ["kind"] = said.Runs.Length > 0 ? said.Runs : KindAnswers.Unknown,
        };
        if (said.Runs == "rheostat")
            block["ohms"] = Figure(question, said.Ohms);
        else if (said.Runs == "steps")
        {
            var steps = AnswerOutline.Steps(said.Steps);
            if (steps is null)
                problems.Add(
                    new(question, "Write the volts of each step with a space between: 6 8 10 12. Or write how many steps there are.")
                );
            block["volts"] = steps ?? AnswerOutline.Steps("")!;
        }
        else
            block["volts"] = new[] { Figure(question, said.Low), Figure(question, said.Full) };
        Add(question, block, KindQuestions.For(a, KindQuestions.Runs, n));
        if (a.IsDirectAt(n))
        {
            var rectifier = new OutlineFields
            {
                ["block"] = "rectifier",
                ["throttle"] = id,
                ["kind"] = said.Output == "dc" ? KindAnswers.Unknown : said.Output,
            };
            // One unknown stack is told apart; of several that are the same, what is usual is taken.
            if (said.Cell.Length > 0 && (a.Cell != KindAnswers.Unknown || a.DirectThrottles.Count() == 1))
                rectifier["cell"] = said.Cell;
            Add(KindQuestions.For(a, KindQuestions.Cell, n), rectifier, KindQuestions.For(a, KindQuestions.Output, n));
        }
    }

    private void Levers()
    {
        var ids = Throttles.Select(n => PostMark.Throttle(a, n)).ToList();
        foreach (var n in Throttles.Where(n => a.At(n).Range == "each"))
        {
            var question = KindQuestions.For(a, KindQuestions.Range, n);
            Add(question, WithBoost(new() { ["block"] = "range", ["throttle"] = ids[n] }, question, a.At(n).RangeVolts));
        }
        // What is no longer asked for is not built, either.
        int[] whistles = [.. a.WhistleThrottles];
        if (whistles.Length > 0 && a.Whistle == "shared")
            Whistle(whistles.Select(n => ids[n]).ToList(), KindQuestions.WhistleFrom, a.WhistleFrom, a.WhistleVolts, isOne: true);
        else
            foreach (var n in whistles)
            {
                var (said, question) = (a.At(n), KindQuestions.For(a, KindQuestions.WhistleFrom, n));
                Whistle(ids[n], question, said.WhistleFrom, said.WhistleVolts, whistles.Length == 1 || a.WhistleFrom == KindAnswers.Differ);
            }
        if (a.Direction == "reverses" && !a.IsDirect && Throttles.Any(a.IsDirectAt))
            problems.Add(new(KindQuestions.Direction, "A reversing switch needs DC, and one throttle gives AC. Choose again."));
        foreach (var n in Throttles.Where(n => a.At(n).Direction is not ("" or KindAnswers.None or KindAnswers.Unknown)))
            Add(
                KindQuestions.For(a, KindQuestions.Direction, n),
                new()
                {
                    ["block"] = "direction",
                    ["throttle"] = ids[n],
                    ["kind"] = a.At(n).Direction == "some" ? KindAnswers.Unknown : a.At(n).Direction,
                }
            );
    }

    /// <param name="isOne">True where "I don't know" is of this whistle alone: both stay possible. Of several, what is usual is taken.</param>
    private void Whistle(object throttle, string question, string from, string volts, bool isOne)
    {
        var block = new OutlineFields { ["block"] = "whistle", ["throttle"] = throttle };
        if (from == KindAnswers.None)
            block["boost"] = 0;
        else
            WithBoost(block, question, volts);
        if (from is "own" or "winding" || (from == KindAnswers.Unknown && isOne))
            block["from"] = from;
        Add(question, block);
    }

    private OutlineFields WithBoost(OutlineFields block, string question, string typed)
    {
        if (typed.Trim().Length > 0)
            block["boost"] = Figure(question, typed);
        return block;
    }

    private void Breaker()
    {
        if (a.Breaker is "" or KindAnswers.None)
            return;
        var block = new OutlineFields { ["block"] = "breaker", ["in"] = a.Breaker };
        if (a.BreakerAmps.Trim().Length > 0)
            block["amps"] = Figure(KindQuestions.Breaker, a.BreakerAmps);
        Add(KindQuestions.Breaker, block);
    }

    private void Lamp(Dictionary<string, string> windings)
    {
        if (a.Lamp is "" or KindAnswers.None || windings.Count == 0)
            return;
        if (a.Lamp == "own")
            Add(
                KindQuestions.Lamp,
                new()
                {
                    ["block"] = "winding",
                    ["id"] = "lamp",
                    ["volts"] = Figure(KindQuestions.Lamp, a.LampVolts),
                }
            );
        var (first, id) = windings.First();
        object across = a.Lamp switch
        {
            "own" => "lamp",
            "main" => id,
            "breaker" => "breaker",
            "post" => LampPlace.Posts(a, first),
            _ => KindAnswers.Unknown,
        };
        var block = new OutlineFields { ["block"] = "pilot", ["across"] = across };
        if (a.Lamp != "own" && a.LampVolts.Trim().Length > 0)
            block["volts"] = Figure(KindQuestions.Lamp, a.LampVolts);
        Add(KindQuestions.Lamp, block);
    }

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}
