using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;

namespace Ohmstead.App.Commands;

/// <summary>The usual help, with the verb's examples below it.</summary>
internal sealed class HelpWithExamples(HelpAction usual) : SynchronousCommandLineAction
{
    private static readonly string[] Overview =
    [
        "ohmstead example                            the main job on an invented unit, explained",
        "ohmstead diagnose --help                    a verb's own options and examples",
        "source <(ohmstead completion bash)          complete verbs and options with the Tab key",
    ];

    /// <inheritdoc/>
    public override bool ClearsParseErrors => true;

    /// <summary>Shows examples wherever a verb of this root shows its help.</summary>
    public static void PutInto(RootCommand root)
    {
        foreach (var help in root.Options.OfType<HelpOption>())
            if (help.Action is HelpAction usual)
                help.Action = new HelpWithExamples(usual);
    }

    /// <inheritdoc/>
    public override int Invoke(ParseResult parseResult)
    {
        var code = usual.Invoke(parseResult);
        var to = parseResult.InvocationConfiguration.Output;
        to.WriteLine("Examples:");
        foreach (var example in parseResult.CommandResult.Command is Verb verb ? verb.Examples : Overview)
            to.WriteLine($"  {example}");
        to.WriteLine();
        return code;
    }
}
