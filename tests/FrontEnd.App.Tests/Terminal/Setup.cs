using System.Runtime.CompilerServices;
using FrontEnd.Terminal;
using FrontEnd.Terminal.Screens;
using FrontEnd.Documents;
using FrontEnd.Documents.Reading;
using FrontEnd.Reporting;
using Xunit;

namespace FrontEnd.App.Tests.Terminal;

/// <summary>What every test here starts from.</summary>
internal static class Setup
{
    public static string Root { get; } = FindRoot();

    public static string Headband => Path.Combine(Root, "designs", "dry-headband.toml");

    // Before any type of the widget library: never touch the terminal that the tests run in, nor anyone's settings.
    [ModuleInitializer]
    internal static void NoRealTerminal()
    {
        // As a hook inside the program under test this assembly changes nothing there.
        if (Environment.GetEnvironmentVariable(StartupHook.Switch) is null)
        {
            Prepare();
        }
    }

    private static void Prepare()
    {
        Environment.SetEnvironmentVariable("DisableRealDriverIO", "1");
        Environment.SetEnvironmentVariable("TUI_CONFIG", null);
        TerminalHost.Prepare();
    }

    public static Model Start(string? path = null, int width = 80, int height = 24)
    {
        DesignDocument document = path is null ? DesignDocument.Parse(DesignDocument.StarterText, DocumentFormat.Toml) : DesignDocument.Read(path);
        (Model model, Effect effect) = Model.Start(document, path);
        return Settle(model with { Width = width, Height = height }, effect);
    }

    /// <summary>Performs evaluations and studies at once, as the background would; other effects are left.</summary>
    public static Model Settle(Model model, Effect? effect) => effect switch
    {
        Effect.Evaluate evaluate => Updater.Update(model, new Message.Evaluated(evaluate.Slot, evaluate.Run,
            evaluate.Figures(Evaluator.Evaluate))).Model,
        Effect.Study study => Updater.Update(model, new Message.Studied(study.Number, study.Page.Work(study.Design, _ => { }, CancellationToken.None))).Model,
        Effect.Several several => several.Effects.Aggregate(model, Settle),
        _ => model,
    };

    public static Model Press(this Model model, params Keystroke[] keys) =>
        keys.Aggregate(model, (now, key) => Updater.Update(now, new Message.Pressed(key)) is var (next, effect) ? Settle(next, effect) : now);

    public static Model Press(this Model model, params KeyName[] keys) => model.Press([.. keys.Select(key => new Keystroke(key))]);

    public static Model Type(this Model model, string text) => model.Press([.. text.Select(Keystroke.Of)]);

    public static string Screen(this Model model, bool ascii = false) => Painter.Paint(model, ascii).ToString();

    /// <summary>The model with a field in hand, wherever it is on the forms.</summary>
    public static Model At(this Model model, string place, string key)
    {
        Model there = Updater.Update(model, new Message.GoTo(place)).Model;
        int row = Whereabouts.FormOf(there).ToList().FindIndex(one => one.Field.Key == key);
        Assert.True(row >= 0, $"{key} is not on the form of {place}");
        return there with { FieldRow = row };
    }

    private static string FindRoot()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "FrontEnd.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return folder ?? throw new InvalidOperationException("FrontEnd.sln is in no folder above the tests.");
    }
}
