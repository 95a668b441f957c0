using System.Collections.Immutable;
using System.Globalization;
using Ohmstead.Electrical.Outlines;

namespace Ohmstead.Workshop.Asking;

/// <summary>The blocks of an outline, answer by answer.</summary>
internal sealed class AnswerBlocks(KindAnswers a)
{
    /// <summary>Windings on which no throttle runs, in the order of their first posts.</summary>
    private static readonly string[] FixedWindings = ["fixed", "other", "further"];

    private static readonly string[] SeveralWindings = ["first", "second", "third", "fourth"];

    private readonly List<OutlineFields> blocks = [];
    private readonly List<string> questions = [];
    private readonly List<AnswerProblem> problems = [];

    private IEnumerable<int> Throttles => Enumerable.Range(0, a.ThrottleCount);

    private IEnumerable<PostAnswer> Fixed => a.Fixed == KindAnswers.None ? [] : a.Posts.Where(p => !p.IsEmpty);

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
        return new(outline.Text, [.. questions], [.. problems]);
    }

    private void Add(string question, OutlineFields block)
    {
        blocks.Add(block);
        questions.Add(question);
    }

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
        string[] run = a.IsDirect
            ? [""]
            : [.. Throttles.Select(n => PostMark.Return(a.Throttle(n).Return)).Distinct(StringComparer.OrdinalIgnoreCase)];
        if (a.ThrottleCount > 0)
            foreach (var (from, n) in run.Select((r, n) => (r, n)))
                Winding(ids, from, run.Length == 1 ? "main" : SeveralWindings[n], FirstOn(from));
        var free = 0;
        foreach (var from in Fixed.Where(p => p.FedFrom.Trim().Length == 0).Select(p => PostMark.Return(p.Return)))
            if (!ids.ContainsKey(from))
                Winding(ids, from, free < FixedWindings.Length ? FixedWindings[free++] : $"fixed-{Number(++free)}", KindQuestions.Fixed);
        return ids;
    }

    private string FirstOn(string from) =>
        KindQuestions.Posts(Throttles.First(n => a.IsDirect || PostMark.IsSame(PostMark.Return(a.Throttle(n).Return), from)));

    private void Winding(Dictionary<string, string> ids, string from, string id, string question)
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
        if (a.Runs == "rheostat" && question != KindQuestions.Fixed)
            block["volts"] = Figure(question, a.Throttle(KindQuestions.ThrottleOf(question)).Full);
        Add(question, block);
    }

    private void Throttle(int n, Dictionary<string, string> windings)
    {
        var (said, question, id) = (a.Throttle(n), KindQuestions.Posts(n), PostMark.Throttle(a, n));
        var block = new OutlineFields
        {
            ["block"] = "throttle",
            ["id"] = id,
            ["on"] = windings[a.IsDirect ? "" : PostMark.Return(said.Return)],
            ["kind"] = a.Runs.Length > 0 ? a.Runs : KindAnswers.Unknown,
        };
        if (a.Runs == "rheostat")
            block["ohms"] = Figure(question, said.Ohms);
        else if (a.Runs == "steps")
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
        Add(question, block);
        if (a.IsDirect)
        {
            var rectifier = new OutlineFields
            {
                ["block"] = "rectifier",
                ["throttle"] = id,
                ["kind"] = a.Output == "dc" ? KindAnswers.Unknown : a.Output,
            };
            // One unknown stack is told apart; of several, what is usual is taken.
            if (a.Cell.Length > 0 && (a.Cell != KindAnswers.Unknown || a.ThrottleCount == 1))
                rectifier["cell"] = a.Cell;
            Add(KindQuestions.Output, rectifier);
        }
    }

    private void Levers()
    {
        var ids = Throttles.Select(n => PostMark.Throttle(a, n)).ToList();
        if (a.Range == "each")
            foreach (var id in ids)
                Add(KindQuestions.Range, WithBoost(new() { ["block"] = "range", ["throttle"] = id }, KindQuestions.Range, a.RangeVolts));
        // What is no longer asked for is not built, either.
        var whistle = ids.Count == 0 || a.IsDirect ? "" : a.Whistle;
        if (whistle == "shared")
            Whistle(ids, isOne: true);
        else if (whistle == "each")
            foreach (var id in ids)
                Whistle(id, ids.Count == 1);
        var direction = a.Direction == "some" ? KindAnswers.Unknown : a.Direction;
        if (direction is not ("" or KindAnswers.None) && a.Direction != KindAnswers.Unknown)
            foreach (var id in ids)
                Add(
                    KindQuestions.Direction,
                    new()
                    {
                        ["block"] = "direction",
                        ["throttle"] = id,
                        ["kind"] = direction,
                    }
                );
    }

    private void Whistle(object throttle, bool isOne)
    {
        var block = new OutlineFields { ["block"] = "whistle", ["throttle"] = throttle };
        if (a.WhistleFrom == KindAnswers.None)
            block["boost"] = 0;
        else
            WithBoost(block, KindQuestions.WhistleFrom, a.WhistleVolts);
        if (a.WhistleFrom is "own" or "winding" || (a.WhistleFrom == KindAnswers.Unknown && isOne))
            block["from"] = a.WhistleFrom;
        Add(KindQuestions.WhistleFrom, block);
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
            "post" => LampPosts(first),
            _ => KindAnswers.Unknown,
        };
        var block = new OutlineFields { ["block"] = "pilot", ["across"] = across };
        if (a.Lamp != "own" && a.LampVolts.Trim().Length > 0)
            block["volts"] = Figure(KindQuestions.Lamp, a.LampVolts);
        Add(KindQuestions.Lamp, block);
    }

    /// <summary>The post that was said, with the post that its volts are counted from; else the first fixed one; else the first throttle's.</summary>
    private string[] LampPosts(string first)
    {
        var said = a.LampPost.Trim();
        foreach (var n in Throttles)
            if (said.Length > 0 && !a.IsDirect && PostMark.IsSame(a.Throttle(n).Post, said))
                return [PostMark.Return(a.Throttle(n).Return), PostMark.Throttle(a, n)];
        if (Fixed.FirstOrDefault(p => said.Length == 0 || PostMark.IsSame(p.Post, said)) is { } post)
            return
            [
                PostMark.Return((Fixed.FirstOrDefault(p => PostMark.IsSame(p.Post, post.FedFrom)) ?? post).Return),
                PostMark.Of(post.Post),
            ];
        return
        [
            first.Length > 0 ? first : PostMark.Throttle(a, 0) + "-b",
            said.Length > 0 ? PostMark.Of(said) : PostMark.Throttle(a, 0) + (a.IsDirect ? "-a" : ""),
        ];
    }

    private static string Number(int n) => n.ToString(CultureInfo.InvariantCulture);
}
