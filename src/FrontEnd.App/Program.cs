using System.Text;
using FrontEnd.App.Commands;

// UTF-8 whatever the locale says: the output is full of Ω and µ.
using StreamWriter output = new(Console.OpenStandardOutput(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
using StreamWriter messages = new(Console.OpenStandardError(), new UTF8Encoding(encoderShouldEmitUTF8Identifier: false)) { AutoFlush = true };
if (OperatingSystem.IsWindows())
{
    Console.OutputEncoding = Encoding.UTF8;
}

bool onTerminal = !Console.IsInputRedirected && !Console.IsOutputRedirected;
return CommandLine.Run(args, new Outlet(output, messages), openTerminal: onTerminal ? Terminal : null);

// The seam for the screens: called where nothing was asked for and someone sits at a terminal. Null means that there are none to open.
static int? Terminal() => null;
