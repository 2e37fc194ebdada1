using System.Text;
using FrontEnd.App;
using FrontEnd.App.Commands;

// UTF-8 whatever the locale says: the output is full of Ω and µ.
// The buffer holds what most commands print, so that it goes out in one piece.
using StreamWriter output = new(StandardStreams.Results(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), bufferSize: 1 << 15);
using StreamWriter messages = new(StandardStreams.Messages(),
    new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true };
if (OperatingSystem.IsWindows())
{
    Console.OutputEncoding = Encoding.UTF8;
}

bool onTerminal = !Console.IsInputRedirected && !Console.IsOutputRedirected;
Outlet outlet = new(output, messages) { Answers = onTerminal ? Console.In : null };

// A design alone opens the screens over it; where there is no terminal they say what to use instead.
if (args is [var design] && DesignInput.IsDesign(design))
{
    return ScreensProgram.Open(design, outlet);
}

return CommandLine.Run(args, outlet, openTerminal: onTerminal ? () => ScreensProgram.Open(null, outlet) : null);
