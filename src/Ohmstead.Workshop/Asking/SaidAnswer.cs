namespace Ohmstead.Workshop.Asking;

/// <summary>Answers in a few words, to be looked over.</summary>
internal static class SaidAnswer
{
    /// <summary>What was answered, in a few words.</summary>
    public static string Of(KindAnswers a, string key)
    {
        var chosen = KindQuestions.Chosen(a, key);
        if (key == KindQuestions.Plate)
            return Joined((a.Volts, "V"), (a.Watts, "W"), (a.Hertz, "Hz"));
        if (key == KindQuestions.Fixed)
            return a.Fixed == KindAnswers.None || !a.Posts.Any(p => !p.IsEmpty)
                ? "none"
                : string.Join(
                    ", ",
                    a.Posts.Where(p => !p.IsEmpty)
                        .Select(p => $"{PostMark.Of(p.Post)}{(p.Volts.Trim().Length > 0 ? $" {p.Volts.Trim()} V" : "")}")
                );
        if (KindQuestions.ThrottleOf(key) is >= 0 and var n)
        {
            var t = a.Throttle(n);
            var posts = string.Join(" and ", new[] { t.Post, t.Return }.Where(p => p.Trim().Length > 0).Select(PostMark.Of));
            var volts = a.At(n).Runs switch
            {
                "steps" => Joined((t.Steps, "")),
                "rheostat" => Joined((t.Full, "V full"), (t.Ohms, "Ω")),
                _ => Joined((t.Low, "V low"), (t.Full, "V full")),
            };
            return posts.Length > 0 && !a.IsDirectAt(n) ? $"{posts}, {volts}" : volts;
        }
        return QuestionWords.Of(a, key).Choices.FirstOrDefault(c => c.Word == chosen) is { } choice ? choice.Title : "not known";
    }

    private static string Joined(params ReadOnlySpan<(string Typed, string Unit)> all)
    {
        var said = new List<string>();
        foreach (var (typed, unit) in all)
            if (typed.Trim().Length > 0)
                said.Add(unit.Length > 0 ? $"{typed.Trim()} {unit}" : typed.Trim());
        return said.Count == 0 ? "not known" : string.Join(", ", said);
    }
}
