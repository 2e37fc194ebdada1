using System.Reflection;
using FrontEnd.Terminal;
using FrontEnd.App.Commands;
using FrontEnd.Designs;
using FrontEnd.Documents;
using Xunit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>Views print and never calculate: what the core works with is not named outside it.</summary>
public class ViewsTests
{
    private static readonly Assembly Core = typeof(Design).Assembly;

    /// <summary>Rooms of the core in which nothing but calculation stands.</summary>
    private static readonly string[] WorkingRooms = ["FrontEnd.Networks", "FrontEnd.Budgets"];

    /// <summary>Public classes of other rooms that work something out; by name, whichever room they stand in.</summary>
    private static readonly string[] WorkingClasses =
    [
        "DigitalChain", "Folding", "PreferredValues", "Circuit", "CircuitPart", "FrequencyResponse", "StepResponse", "RoundOff", "ZeroPhase",
        "Butterworth", "Notch", "MinimumOrder", "FilterDesign", "EquirippleDesign", "KaiserDesign",
        "SectionRunner", "SingleRunner", "FixedRunner", "FirRunner", "CombRunner",
        "PowerFormulas", "AmplifierFormulas", "ConverterFormulas", "ElectrodeFormulas", "MainsFormulas", "FilterFormulas", "NoiseFormulas",
        "MontageFormulas", "SafetyFormulas",
    ];

    /// <summary>What answers for a whole design: commands and screens ask it, sheets are given its answer.</summary>
    private static readonly string[] EntryPoints = ["Evaluator", "Advisor", "SpreadRun", "Sizer", "RateStudy"];

    /// <summary>A list that names something gone guards nothing.</summary>
    [Fact]
    public void WorkingClasses_AllOfThem_Exist()
    {
        HashSet<string> names = [.. Core.GetTypes().Select(type => type.Name)];
        Assert.Equal([], WorkingClasses.Concat(EntryPoints).Except(names));
        Assert.All(WorkingRooms, room => Assert.Contains(Core.GetTypes(), type => type.Namespace == room));
    }

    [Fact]
    public void Views_NoneOfThem_NamesWhatTheCoreWorksWith()
    {
        Assert.Equal([], Named(typeof(DesignDocument).Assembly.GetTypes(), WorkingClasses));
        Assert.Equal([], Named(typeof(Updater).Assembly.GetTypes(), WorkingClasses));
        Assert.Equal([], Named(typeof(CommandLine).Assembly.GetTypes(), WorkingClasses));
    }

    [Fact]
    public void Sheets_NoneOfThem_AsksForAnAnswerItself()
    {
        Type[] sheets = [.. typeof(DesignDocument).Assembly.GetTypes().Where(type => type.Namespace == "FrontEnd.Documents.Sheets")];
        Assert.NotEmpty(sheets);
        Assert.Equal([], Named(sheets, EntryPoints));
    }

    /// <summary>The search does find such a class where one is named.</summary>
    [Fact]
    public void Commands_AskForAnswers_AsTheSearchSees() => Assert.NotEmpty(Named(typeof(CommandLine).Assembly.GetTypes(), EntryPoints));

    private static string[] Named(IEnumerable<Type> views, string[] classes) =>
    [
        .. from view in views
           from used in Reached.TypesIn(view)
           where used.Assembly == Core && (WorkingRooms.Contains(used.Namespace) || classes.Contains(used.Name))
           select $"{view.Name} names {used.Name}",
    ];
}
