#!/usr/bin/env bash
# Run by hand, from anywhere: packs the two libraries and the command, installs the command from that folder alone, uses it, runs a program on the packed library, and takes the command away again.
# Not part of the tests: it takes about two minutes, and some more with native code.
#   tests/pack-and-install.sh            the tool as assemblies for any system
#   tests/pack-and-install.sh native     with native code for this system too, which is then what is installed
# All that it writes stands under out/pack.
set -euo pipefail
cd "$(dirname "$0")/.."
export DOTNET_CLI_TELEMETRY_OPTOUT=1 DOTNET_NOLOGO=1

out=$PWD/out/pack
packages=$out/packages
version=$(sed -n 's:.*<Version>\(.*\)</Version>.*:\1:p' Directory.Build.props)
case "$(uname -s)-$(uname -m)" in
    Linux-x86_64) here=linux-x64 ;;
    Linux-aarch64) here=linux-arm64 ;;
    Darwin-arm64) here=osx-arm64 ;;
    *) here= ;;
esac

say() { printf '\n== %s\n' "$*"; }
fail() { printf 'FAILS: %s\n' "$*" >&2; exit 1; }
names() { python3 -c 'import sys, zipfile
for item in zipfile.ZipFile(sys.argv[1]).infolist(): print(item.file_size, item.filename)' "$1"; }
# Not through a pipe: one that stops reading at the first hit would fail the one that writes.
holds() { grep -Eq "$2" <<< "$(names "$1")"; }
pack() { dotnet pack "$@" -o "$packages" -v q; }

rm -rf "$out"
mkdir -p "$packages"

say "pack FrontEnd.Core and FrontEnd.Documents $version"
pack src/FrontEnd
pack src/FrontEnd.Documents

native=
if [ "${1:-}" = native ]; then
    native=$here
    [ -n "$native" ] || fail "no native package is made for this system"
fi
say "pack FrontEnd.Tool $version for ${native:+$native and }any"
rm -rf src/FrontEnd.App/bin/Release/net10.0/*/publish
if [ -n "$native" ]; then
    pack src/FrontEnd.App
    pack src/FrontEnd.App -r any -p:PublishAot=false
    pack src/FrontEnd.App -r "$native"
else
    # Named as the only one, so that it is taken here too, where the project names a native one.
    pack src/FrontEnd.App -p:ToolPackageRuntimeIdentifiers=any
    pack src/FrontEnd.App -r any -p:PublishAot=false -p:ToolPackageRuntimeIdentifiers=any
fi
# What was restored for one system is replaced by what every build uses.
dotnet restore FrontEnd.sln -v q

say "the packages"
for package in "$packages"/*; do
    printf '%9d %s\n' "$(wc -c < "$package")" "${package##*/}"
done
for package in "$packages"/FrontEnd.Tool*.nupkg; do
    if names "$package" | grep -E '\.(pdb|dbg|xml)$' | grep -Ev 'DotnetToolSettings|Content_Types'; then fail "${package##*/} holds symbols or documentation"; fi
done
for package in "$packages"/FrontEnd.Tool.*[a-z]*."$version".nupkg; do
    holds "$package" '/frontend-screens(\.dll|\.exe)?$' || fail "${package##*/} is without the screens"
done
python3 -c 'import sys, zipfile; print(zipfile.ZipFile(sys.argv[1]).read("FrontEnd.Documents.nuspec").decode("utf-8-sig"))' "$packages/FrontEnd.Documents.$version.nupkg" \
    | grep -F "\"FrontEnd.Core\" version=\"[$version" || fail "the documents would take another version of the core"
names "$packages/FrontEnd.Core.$version.nupkg" | grep -E 'lib/|README|nuspec'
holds "$packages/FrontEnd.Core.$version.snupkg" '\.pdb$' || fail "no symbols of the core"
if grep -qF "$PWD" src/FrontEnd/bin/Release/net10.0/FrontEnd.Core.dll src/FrontEnd/bin/Release/net10.0/FrontEnd.Core.pdb; then fail "the core names a folder of this machine"; fi

say "install the tool from $packages"
dotnet tool install FrontEnd.Tool --tool-path "$out/tool" --add-source "$packages" --version "$version"
tool=$out/tool/frontend
"$tool" --version
find "$out/tool/.store" -name 'frontend-screens*' -not -name '*.json' | sed "s:$out/::"

say "frontend check designs/starter.toml"
code=0
"$tool" check designs/starter.toml > "$out/check.txt" || code=$?
[ "$code" -le 1 ] || fail "check ended with $code"
head -n 12 "$out/check.txt"
printf '(%d lines, exit code %d)\n' "$(wc -l < "$out/check.txt")" "$code"
cmp "$out/check.txt" <(dotnet run --project src/FrontEnd.App -- check designs/starter.toml) && echo "the same as from source"

say "the screens, over a design, in a terminal of 100 columns"
python3 - "$tool" designs/starter.toml "$out/state" << 'END'
import fcntl, os, pty, select, struct, sys, termios, time
child, terminal = pty.fork()
if child == 0:
    fcntl.ioctl(0, termios.TIOCSWINSZ, struct.pack("HHHH", 30, 100, 0, 0))
    os.environ["TERM"] = "xterm-256color"
    # What was left unsaved on this machine is none of this script's business: the screens would ask about it.
    os.environ["XDG_STATE_HOME"] = sys.argv[3]
    sys.argv.pop()
    os.execv(sys.argv[1], sys.argv[1:])
seen, asked, end = b"", False, time.time() + 60
while time.time() < end:
    ready, _, _ = select.select([terminal], [], [], 0.5)
    try:
        seen += os.read(terminal, 65536) if ready else b""
    except OSError:
        break
    if not asked and b"starter" in seen and not ready:
        os.write(terminal, b"q")
        asked = True
if time.time() >= end:
    os.kill(child, 9)
    sys.exit("the screens do not end")
code = os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])
print(f"{len(seen)} bytes drawn, ended by q with exit code {code}")
sys.exit(code if asked else "the screens show no design:\n" + seen.decode(errors="replace"))
END

if grep -q '^ *completion' <<< "$("$tool" --help)"; then
    say "frontend completion bash"
    "$tool" completion bash > "$out/completion.bash"
    PATH=$out/tool:$PATH bash -euc 'source "$1"; COMP_WORDS=(frontend che) COMP_CWORD=1 COMP_LINE="frontend che" COMP_POINT=12; _frontend; echo "frontend che<Tab>: ${COMPREPLY[*]}"; [ "${COMPREPLY[*]}" = check ]' \
        - "$out/completion.bash"
fi

say "a program on the packed library"
# Its packages go into a folder of their own: a later package of the same version must not be mistaken for this one.
mkdir -p "$out/program"
echo '<Project />' > "$out/program/Directory.Build.props"
echo '<Project />' > "$out/program/Directory.Packages.props"
echo "<configuration><packageSources><add key=\"packed\" value=\"$packages\" /></packageSources></configuration>" > "$out/program/nuget.config"
sed "s|^#:project .*|#:package FrontEnd.Core@$version\n#:property PublishAot=false|" designs/code/filter.cs > "$out/program/filter.cs"
NUGET_FALLBACK_PACKAGES=${NUGET_PACKAGES:-$HOME/.nuget/packages} NUGET_PACKAGES=$out/cache dotnet run "$out/program/filter.cs"

say "uninstall"
dotnet tool uninstall FrontEnd.Tool --tool-path "$out/tool"
[ ! -e "$tool" ] || fail "$tool is still there"
say "all done"
