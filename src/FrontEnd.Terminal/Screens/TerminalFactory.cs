using System.Runtime.CompilerServices;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Time;

namespace FrontEnd.Terminal.Screens;

/// <summary>Makes the widget library's application with our own reader of the terminal in it.</summary>
internal sealed class TerminalFactory : AnsiComponentFactory
{
    /// <summary>The reader; null before the application is initialised.</summary>
    public TerminalInput? Input { get; private set; }

    /// <inheritdoc/>
    public override IInput<char> CreateInput() => Input = new TerminalInput();

    /// <summary>An application whose parts come from here.</summary>
    public IApplication CreateApplication() => (IApplication)Make(this, new SystemTimeProvider());

    // The one way to hand it a factory: its registry of drivers ignores every factory but its own. The version is pinned; another one that has
    // no such constructor fails here, before anything is shown.
    [UnsafeAccessor(UnsafeAccessorKind.Constructor)]
    [return: UnsafeAccessorType("Terminal.Gui.App.ApplicationImpl, Terminal.Gui")]
    private static extern object Make(IComponentFactory factory, ITimeProvider time);
}
