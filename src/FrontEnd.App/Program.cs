using System.Text;
using FrontEnd.App.Commands;
using FrontEnd.App.Terminal.Screens;

// UTF-8 whatever the locale says: the output is full of Ω and µ.
using StreamWriter output = new(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
using StreamWriter messages = new(Console.OpenStandardError(),
    new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true };
if (OperatingSystem.IsWindows())
{
    Console.OutputEncoding = Encoding.UTF8;
}

// A design alone opens the screens over it; where there is no terminal they say what to use instead.
if (args is [var design] && TerminalProgram.IsDesign(design))
{
    return TerminalProgram.Run(design);
}

bool onTerminal = !Console.IsInputRedirected && !Console.IsOutputRedirected;
return CommandLine.Run(args, new Outlet(output, messages), openTerminal: onTerminal ? () => TerminalProgram.Run(null) : null);
