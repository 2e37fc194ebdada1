namespace FrontEnd.Terminal;

/// <summary>What can be done, in the order of the help, and which key means what. The one list: keys, key line, help, the page of what else
/// there is and the laws' pages are made from it.</summary>
internal static class KeyMap
{
    /// <summary>Everything that can be done. A page's way stands here as one line.</summary>
    public static readonly IReadOnlyList<Act> Acts =
    [
        Act.PreviousBlock, Act.NextBlock, Act.Up, Act.Down, Act.PageUp, Act.PageDown, Act.First, Act.Last, Act.SwitchPane,
        Act.Enter, Act.Back,
        Act.StepUp, Act.StepDown, Act.ToDefault, Act.ToSaved, Act.Undo, Act.Redo,
        Act.ViewVerdicts, Act.ViewNoise, Act.ViewMains, Act.ViewLevels, Act.ViewAliases, Act.ViewSafety, Act.ViewPower, Act.ViewSheet,
        GraphPage.Way,
        InsertPage.Way,
        Act.RemoveStage, Act.MoveEarlier, Act.MoveLater, Act.Apply,
        ComparePage.Way,
        Act.NextDesign, Act.CloseDesign, Act.Open, Act.Save, Act.SaveAs, Act.WriteSheet,
        MorePage.Way,
        RatesPage.Way,
        SpreadPage.Way,
        SizingPage.Way,
        BoughtPage.Way,
        BenchPage.Way,
        SamplesPage.Way,
        PairsPage.Way,
        UnknownsPage.Way,
        SitesPage.Way,
        LessonPage.Way,
        ProblemsPage.Way,
        MarkingPage.Way,
        GlossaryPage.Way,
        Act.WriteCoefficients, Act.TakeFromDisk,
        Errors.Way,
        Act.Tour,
        FieldHelpPage.Way,
        HelpPage.Way,
        Act.Copy, Act.Redraw, Act.Suspend, Act.Quit,
    ];

    /// <summary>What stands under the key of what else there is, in the order of the list.</summary>
    public static readonly IReadOnlyList<Act> More = [.. Acts.Where(act => act.Under != '\0')];

    private static readonly Dictionary<Keystroke, Act> Plain = Build(plain: true);
    private static readonly Dictionary<Keystroke, Act> Always = Build(plain: false);

    /// <summary>What a key means while no field is being typed in; null for nothing.</summary>
    public static Act? Meaning(Keystroke key) =>
        Plain.TryGetValue(key, out Act? act) || Plain.TryGetValue(key with { Shift = false }, out act) ? act : null;

    /// <summary>What a key means while a field is being typed in: the Alt forms and the Ctrl keys; null for nothing.</summary>
    public static Act? MeaningWhileTyping(Keystroke key) => Always.GetValueOrDefault(key with { Shift = false });

    private static Dictionary<Keystroke, Act> Build(bool plain)
    {
        Dictionary<Keystroke, Act> map = [];
        foreach (Act act in Acts)
        {
            if (act.Letter != '\0')
            {
                map[new Keystroke(KeyName.Letter, act.Letter, Alt: true)] = act;
                if (plain)
                {
                    map[Keystroke.Of(act.Letter)] = act;
                    if (char.IsAsciiLetterLower(act.Letter))
                    {
                        // Caps lock must not make the keys dead.
                        map[Keystroke.Of(char.ToUpperInvariant(act.Letter))] = act;
                    }
                }
            }

            foreach (Keystroke key in act.Others.Where(key => plain || key.Ctrl || key.Key == KeyName.F1 || act.IsOfTheTerminal))
            {
                map[key] = act;
            }
        }

        return map;
    }
}
