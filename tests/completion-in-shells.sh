#!/usr/bin/env bash
# Run by hand, from anywhere, with tmux: types half a call into bash, zsh and fish, as many of them as there are, presses the tab key, and looks at what the shell makes of it;
# PowerShell, whose library is a package, is asked the same by a program. The tests themselves run the script of bash alone.
set -euo pipefail
cd "$(dirname "$0")/.."
dotnet build src/FrontEnd.App -v q > /dev/null
work=$(mktemp -d)
trap 'tmux kill-session -t completion 2> /dev/null || true; rm -rf "$work"' EXIT
mkdir "$work/bin" "$work/my designs"
ln -s "$PWD/src/FrontEnd.App/bin/Debug/net10.0/frontend" "$work/bin/frontend"
cp designs/starter.toml "$work/s.toml"
cp designs/starter.toml "$work/my designs/a b.toml"

# What is typed, and what stands there after the tab key: in a shell, and in PowerShell the word that is put in.
lines=(
    'frontend les|frontend lesson|lesson'
    'frontend check s|frontend check s.toml|./s.toml'
    'frontend explain s.toml noise.to|frontend explain s.toml noise.total|noise.total'
    'frontend explain "my designs/a b.toml" noise.source.fo|frontend explain "my designs/a b.toml" noise.source.folded|noise.source.folded'
    'frontend glossary driven|frontend glossary driven\ ground|'"'driven ground'"
    'frontend glossary "driven g|frontend glossary "driven ground"|'"'driven ground'"
    'frontend filter --family=che|frontend filter --family=chebyshev|--family=chebyshev'
    'frontend samples s.toml --signal blink,alp|frontend samples s.toml --signal blink,alpha|alpha'
    'true; frontend problems --top|true; frontend problems --topic|--topic'
)
failed=0

try() {
    local shell=$1 start=$2 load=$3 line typed expected shown
    command -v "$shell" > /dev/null || { echo "$shell: not here"; return; }
    tmux new-session -d -s completion -x 150 -y 30 -c "$work" "env PATH=$work/bin:/usr/bin:/bin HOME=$work PS1='> ' $start"
    sleep 1
    tmux send-keys -t completion "$load; clear" Enter
    sleep 3
    for line in "${lines[@]}"; do
        IFS='|' read -r typed expected _ <<< "$line"
        tmux send-keys -t completion -l "$typed"
        tmux send-keys -t completion Tab
        sleep 2
        shown=$(tmux capture-pane -p -t completion | grep -m1 frontend | sed 's/^[^>#]*[>#] //; s/ *$//')
        # Bash quotes a comma, which means the same.
        if [ "${shown//\\,/,}" = "$expected" ]; then echo "$shell: $typed<Tab> gives $shown"; else echo "$shell: $typed<Tab> gives $shown, not $expected"; failed=1; fi
        tmux send-keys -t completion C-c
        tmux send-keys -t completion C-u
        tmux send-keys -t completion -l clear
        tmux send-keys -t completion Enter
        sleep 1
    done
    tmux kill-session -t completion
}

try bash 'bash --norc --noprofile -i' 'eval "$(frontend completion bash)"'
try zsh 'zsh -f -i' 'autoload -U compinit; compinit -u; source <(frontend completion zsh)'
try fish 'fish --no-config -i' 'frontend completion fish | source'

echo '<Project />' > "$work/Directory.Build.props"
cp "$work/Directory.Build.props" "$work/Directory.Packages.props"
printf '%s\n' "${lines[@]}" > "$work/lines"
cat > "$work/powershell.cs" << 'END'
#:package Microsoft.PowerShell.SDK@7.6.9
#:property PublishAot=false
using System.Management.Automation;
using System.Management.Automation.Runspaces;

using Runspace runspace = RunspaceFactory.CreateRunspace();
runspace.Open();
using PowerShell shell = PowerShell.Create(runspace);
shell.AddScript("frontend completion powershell | Out-String | Invoke-Expression").Invoke();
bool good = shell.Streams.Error.Count == 0;
foreach (string[] line in File.ReadLines("lines").Select(line => line.Split('|')))
{
    shell.Commands.Clear();
    string typed = line[0].Replace("true;", "$x = 1;"), text = CommandCompletion.CompleteInput(typed, typed.Length, null, shell).CompletionMatches.FirstOrDefault()?.CompletionText ?? "nothing";
    Console.WriteLine($"powershell: {typed}<Tab> puts in {text}{(text == line[2] ? "" : $", not {line[2]}")}");
    good &= text == line[2];
}

return good ? 0 : 1;
END
(cd "$work" && PATH=$work/bin:$PATH dotnet run powershell.cs) || failed=1
if [ $failed = 0 ]; then echo "all done"; else echo "FAILS" >&2; exit 1; fi
