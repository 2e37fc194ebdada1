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
            local line="${COMP_LINE:0:COMP_POINT}" word="${COMP_WORDS[COMP_CWORD]}" answer before
            # Bash takes an equals sign for a word's end; what stands before it is not put in again.
            before="${line##*[[:space:]]}"
            [[ $before == -*=* ]] && before="${before%%=*}=" || before=
            COMPREPLY=()
            while IFS= read -r answer; do
                answer="${answer#"$before"}"
                if [[ $word == [\"\']* ]]; then COMPREPLY+=("$answer"); else COMPREPLY+=("$(printf '%q' "$answer")"); fi
            done < <(frontend "[suggest:${#line}]" "$line" 2>/dev/null)
        }
        complete -o bashdefault -o default -F _frontend frontend
        """),
        ("zsh",
        """
        #compdef frontend
        # zsh completion for frontend:  frontend completion zsh > "${fpath[1]}/_frontend"  (or: source <(frontend completion zsh))
        _frontend() {
            local line="${(j: :)words[1,CURRENT]}"
            local -a found
            found=("${(@f)$(frontend "[suggest:${#line}]" "$line" 2>/dev/null)}")
            found=("${(@)found:#}")
            if (( ${#found} )); then compadd -a found; else _files; fi
        }
        if [[ "${funcstack[1]}" == _frontend ]]; then _frontend "$@"; else compdef _frontend frontend; fi
        """),
        ("fish",
        """
        # fish completion for frontend:  frontend completion fish > ~/.config/fish/completions/frontend.fish
        function __frontend_complete
            set -l line (commandline -cp)
            set -l found (frontend "[suggest:"(string length -- "$line")"]" "$line" 2>/dev/null)
            if test (count $found) -gt 0
                printf '%s\n' $found
            else
                __fish_complete_path (commandline -ct)
            end
        end
        complete -c frontend -f -a '(__frontend_complete)'
        """),
        ("powershell",
        """
        # PowerShell completion for frontend:  frontend completion powershell | Out-String | Invoke-Expression  in $PROFILE
        Register-ArgumentCompleter -Native -CommandName frontend -ScriptBlock {
            param($word, $ast, $position)
            # The text of the call ends with its last word, though a space may follow it.
            $line = "$ast".PadRight($position - $ast.Extent.StartOffset)
            frontend "[suggest:$($position - $ast.Extent.StartOffset)]" $line 2>$null | ForEach-Object {
                # A comma ends a word here.
                $answer = if ($word.Contains(',')) { $_ } else { $_.Substring($_.LastIndexOf(',') + 1) }
                $text = if ($answer -match '[\s'';,&|()]') { "'" + $answer.Replace("'", "''") + "'" } else { $answer }
                [System.Management.Automation.CompletionResult]::new($text, $answer, 'ParameterValue', $answer)
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
