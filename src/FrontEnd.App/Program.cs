return FrontEnd.App.Terminal.TerminalProgram.Run(args.Length == 0 ? null : args[0]);
