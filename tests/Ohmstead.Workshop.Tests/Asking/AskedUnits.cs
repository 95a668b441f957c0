using System.Text.Json.Nodes;
using Ohmstead.Workshop.Asking;

namespace Ohmstead.Workshop.Tests.Asking;

/// <summary>Four invented units as a person would describe them.</summary>
internal static class AskedUnits
{
    public const string Id = "own-0001";

    /// <summary>One throttle with a roller, one tap, breaker in the common, no whistle.</summary>
    public static KindAnswers Single { get; } =
        new()
        {
            Volts = "120",
            Watts = "90",
            Count = "1",
            Runs = "roller",
            Output = "ac",
            Throttles =
            [
                new()
                {
                    Post = "A",
                    Return = "U",
                    Low = "6",
                    Full = "18",
                },
            ],
            Posts =
            [
                new()
                {
                    Post = "B",
                    Return = "U",
                    Volts = "14",
                },
            ],
            Range = "none",
            Whistle = "none",
            Direction = "none",
            Breaker = "common",
            Lamp = "none",
        };

    /// <summary>Two throttles on coils of their own, each with a whistle, and a third coil with fixed volts.</summary>
    public static KindAnswers Twin { get; } =
        new()
        {
            Volts = "117",
            Watts = "200",
            Count = "2",
            Runs = "shoe",
            Output = "ac",
            Throttles =
            [
                new()
                {
                    Post = "a",
                    Return = "u",
                    Low = "7",
                    Full = "17",
                },
                new()
                {
                    Post = "D",
                    Return = "V",
                    Low = "7",
                    Full = "17-18",
                },
            ],
            Posts =
            [
                new()
                {
                    Post = "F",
                    Return = "G",
                    Volts = "12",
                },
            ],
            Range = "none",
            Whistle = "each",
            WhistleFrom = "own",
            WhistleVolts = "5",
            Direction = "interrupts",
            Breaker = "throttle",
            Lamp = "own",
            LampVolts = "6.3",
        };

    /// <summary>DC from a bridge behind a resistance wire, with a reversing switch.</summary>
    public static KindAnswers Direct { get; } =
        new()
        {
            Volts = "120",
            Watts = "40",
            Count = "1",
            Runs = "rheostat",
            Output = "bridge",
            Cell = "selenium",
            Throttles = [new() { Full = "16", Ohms = "30" }],
            Posts =
            [
                new()
                {
                    Post = "P",
                    Return = "Q",
                    Volts = "16",
                },
            ],
            Range = "none",
            Direction = "reverses",
            Breaker = "primary",
            BreakerAmps = "1",
            Lamp = "none",
        };

    /// <summary>
    /// Two throttles that have little in common: a roller with a whistle, a button and a range lever; steps behind a bridge, with a reversing
    /// switch.
    /// </summary>
    public static KindAnswers Unlike { get; } =
        new()
        {
            Volts = "115",
            Watts = "150",
            Count = "2",
            Runs = KindAnswers.Differ,
            Output = KindAnswers.Differ,
            Cell = "silicon",
            Throttles =
            [
                new()
                {
                    Post = "A",
                    Return = "U",
                    Low = "6",
                    Full = "18",
                    Runs = "roller",
                    Output = "ac",
                    Range = "each",
                    Whistle = "each",
                    Direction = "interrupts",
                },
                new()
                {
                    Steps = "6 9 12 15",
                    Runs = "steps",
                    Output = "bridge",
                    Range = "none",
                    Direction = "reverses",
                },
            ],
            Posts =
            [
                new()
                {
                    Post = "B",
                    Return = "U",
                    Volts = "14",
                },
            ],
            Range = KindAnswers.Differ,
            Whistle = "each",
            Direction = KindAnswers.Differ,
            Breaker = "throttle",
            Lamp = "none",
        };

    /// <summary>The outline as JSON.</summary>
    public static JsonObject Outline(KindAnswers answers) => (JsonObject)JsonNode.Parse(AnswerOutline.Of(answers, Id).Text)!;

    /// <summary>The blocks of the outline, each as one line.</summary>
    public static string[] Blocks(KindAnswers answers) => [.. ((JsonArray)Outline(answers)["blocks"]!).Select(b => b!.ToJsonString())];
}
