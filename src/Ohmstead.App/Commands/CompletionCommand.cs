using System.CommandLine;

namespace Ohmstead.App.Commands;

/// <summary><c>completion</c>: prints what a shell needs to complete verbs and options.</summary>
internal static class CompletionCommand
{
    private const string Bash = """
        _ohmstead() {
          local words
          words=$("${COMP_WORDS[0]}" "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)
          COMPREPLY=($(compgen -o default -W "$words" -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -o default -F _ohmstead ohmstead ./ohmstead
        """;

    public static Command Make()
    {
        var command = new Command("completion", "Print completion for bash.\nExample: source <(ohmstead completion)");
        command.SetAction(_ =>
        {
            Console.WriteLine(Bash);
            return ExitCode.Done;
        });
        return command;
    }
}
