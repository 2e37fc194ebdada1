using System.CommandLine;

namespace FrontEnd.App.Commands;

/// <summary><c>frontend completion</c>: the script with which a shell completes calls of the program.</summary>
internal static class CompletionCommand
{
    // Each asks the program itself, so that what is completed is what there is; where it has no answer the shell offers files.
    private static readonly (string Shell, string Script)[] Scripts =
    [
        ("bash",
        """
        # bash completion for frontend:  eval "$(frontend completion bash)"  in ~/.bashrc
        _frontend() {
            local IFS=$'\n'
            COMPREPLY=($(compgen -W "$(frontend "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)" -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -o bashdefault -o default -F _frontend frontend
        """),
        ("zsh",
        """
        #compdef frontend
        # zsh completion for frontend:  frontend completion zsh > "${fpath[1]}/_frontend"
        _frontend() {
            local -a found
            found=("${(@f)$(frontend "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)}")
            found=("${(@)found:#}")
            (( ${#found} )) && compadd -a found
            _files
        }
        compdef _frontend frontend
        """),
        ("fish",
        """
        # fish completion for frontend:  frontend completion fish > ~/.config/fish/completions/frontend.fish
        function __frontend_complete
            set -l line (commandline -cp)
            frontend "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null
        end
        complete -c frontend -a '(__frontend_complete)'
        """),
        ("powershell",
        """
        # PowerShell completion for frontend:  frontend completion powershell | Out-String | Invoke-Expression  in $PROFILE
        Register-ArgumentCompleter -Native -CommandName frontend -ScriptBlock {
            param($word, $ast, $position)
            frontend "[suggest:$position]" "$ast" 2>$null | ForEach-Object {
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
            }
        }
        """),
    ];

    /// <summary>The shells there is a script for.</summary>
    public static IEnumerable<string> Shells => Scripts.Select(one => one.Shell);

    public static Command Make(Outlet outlet)
    {
        Argument<string> shell = new("shell") { Description = $"which shell: {string.Join(", ", Shells)}" };
        // Not offered, as there is no such answer: whoever asks for it is told so.
        Option<bool> json = new("--json") { Hidden = true };
        Command command = new("completion", "Prints the script with which a shell completes commands, options and values.") { shell, json };
        command.SetAction(call => Run(call.GetRequiredValue(shell), call.GetValue(json), outlet));
        return command;
    }

    private static int Run(string word, bool json, Outlet outlet)
    {
        if (json)
        {
            outlet.Tell(CallMessages.JsonOf("a script for a shell", "frontend completion", "the shell runs what is printed"));
            return ExitCode.Unusable;
        }

        if (Array.Find(Scripts, one => string.Equals(one.Shell, word, StringComparison.OrdinalIgnoreCase)) is not { Script: { } script })
        {
            outlet.Tell(CallMessages.NoWord("completion", word, [.. Shells], Nearest.Of(word, Shells)));
            return ExitCode.Unusable;
        }

        outlet.Results.Write(script.ReplaceLineEndings("\n") + "\n");
        return ExitCode.Met;
    }
}
