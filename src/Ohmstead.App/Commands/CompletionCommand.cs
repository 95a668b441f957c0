using System.CommandLine;

namespace Ohmstead.App.Commands;

/// <summary><c>completion SHELL</c>: prints what a shell needs to complete verbs and options.</summary>
internal static class CompletionCommand
{
    // The program itself answers which verbs and options could stand at the cursor; where it knows none, the shell offers files.
    private const string Bash = """
        _ohmstead() {
          local line="${COMP_LINE:0:COMP_POINT}" word="${COMP_WORDS[COMP_CWORD]}" words
          COMPREPLY=()
          if [ "$COMP_CWORD" -gt 1 ] && [ "${word:0:1}" != "-" ] && [ "${COMP_WORDS[1]}" != "completion" ]; then return; fi
          words=$("${COMP_WORDS[0]}" "[suggest:${#line}]" "$line" 2>/dev/null)
          mapfile -t COMPREPLY < <(compgen -W "$words" -- "$word")
        }
        complete -o default -o bashdefault -F _ohmstead ohmstead ./ohmstead
        """;

    public static Command Make()
    {
        var shell = new Argument<string>("SHELL")
        {
            Description = "The shell: bash.",
            HelpName = "bash",
            DefaultValueFactory = _ => "bash",
        };
        shell.AcceptOnlyFromAmong("bash");
        var verb = new Verb(
            "completion",
            "Print what a shell needs to complete verbs and options.",
            concernsMains: false,
            "source <(./ohmstead completion bash)        in this shell",
            "./ohmstead completion bash >>~/.bashrc      in every new one"
        )
        {
            shell,
        };
        verb.SetAction(_ =>
        {
            Console.WriteLine(Bash);
            return ExitCode.Done;
        });
        return verb;
    }
}
