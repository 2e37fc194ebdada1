using System.Collections.Immutable;
using System.Reflection;
using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FrontEnd.Designs;
using FrontEnd.Quantities;
using FrontEnd.Tests.Reference;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Architecture;

/// <summary>What holds for the whole of the calculation, whoever adds to it.</summary>
public partial class ArchitectureTests
{
    private static readonly Assembly Core = typeof(Design).Assembly;

    private static readonly string[] ForbiddenNamespaces = ["System.IO", "System.Net", "System.Net.Http", "System.Diagnostics", "System.Threading.Timer"];

    // Words that only guide the compiler or a debugger live in System.Diagnostics too and do nothing when the program runs.
    private static readonly string[] AllowedTypes = ["System.Diagnostics.DebuggerBrowsableAttribute", "System.Diagnostics.DebuggerBrowsableState", "System.Diagnostics.DebuggableAttribute", "System.Diagnostics.DebuggerDisplayAttribute", "System.Diagnostics.DebuggerHiddenAttribute", "System.Diagnostics.DebuggerStepThroughAttribute", "System.Diagnostics.UnreachableException"];

    private static readonly string[] ForbiddenTypes = ["System.Console", "System.DateTime", "System.DateTimeOffset", "System.TimeProvider", "System.Activator"];

    private static readonly string[] ForbiddenMembers = ["System.Globalization.CultureInfo.get_CurrentCulture", "System.Globalization.CultureInfo.get_CurrentUICulture", "System.Random.get_Shared", "System.Guid.NewGuid"];

    [Fact]
    public void PublicStructs_AllOfThem_AreReadonly()
    {
        Type[] structs = [.. Core.GetExportedTypes().Where(type => type.IsValueType && !type.IsEnum)];
        Assert.True(21 <= structs.Length, $"{structs.Length} public structs");
        Assert.All(structs, type => Assert.True(type.IsDefined(typeof(IsReadOnlyAttribute), inherit: false), $"{type.FullName} is not readonly"));
    }

    [Fact]
    public void PublicClasses_NoneHasAPublicField_ThatCanBeSet()
    {
        IEnumerable<FieldInfo> open = Core.GetExportedTypes().Where(type => !type.IsEnum)
            .SelectMany(type => type.GetFields(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly))
            .Where(field => !field.IsInitOnly && !field.IsLiteral);
        Assert.Empty(open.Select(field => $"{field.DeclaringType}.{field.Name}"));
    }

    [Fact]
    public void Quantities_NoneOfThem_ConvertsSilently()
    {
        IEnumerable<Type> quantities = Core.GetExportedTypes().Where(type => type.IsValueType && typeof(IQuantity).IsAssignableFrom(type));
        Assert.All(quantities, type => Assert.DoesNotContain(type.GetMethods(BindingFlags.Public | BindingFlags.Static), method => method.Name is "op_Implicit"));
        Assert.All(quantities, type => Assert.Empty(type.GetConstructors(BindingFlags.Public | BindingFlags.Instance)));
    }

    /// <summary>What another project can read and what carries a unit in its name is a quantity. Curves are rows of many plain numbers, and so is a point of one.</summary>
    [Fact]
    public void PublicMembers_NamedByAUnit_AreNoBareNumbers()
    {
        Type[] bare = [typeof(double), typeof(double?), typeof(double[]), typeof(IReadOnlyList<double>)];
        IEnumerable<string> named = from type in Core.GetExportedTypes()
            where type.Namespace != typeof(IQuantity).Namespace && type != typeof(FrontEnd.Filters.ResponsePoint)
            from property in type.GetProperties(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly)
            where bare.Contains(property.PropertyType) && UnitName().IsMatch(property.Name)
            select $"{type.Name}.{property.Name}";
        Assert.Empty(named);
    }

    [Fact]
    public void Core_References_MathNetNumericsAndTheFrameworkOnly()
    {
        IEnumerable<string> others = Core.GetReferencedAssemblies().Select(name => name.Name!)
            .Where(name => !name.StartsWith("System.", StringComparison.Ordinal) && name is not ("netstandard" or "mscorlib" or "MathNet.Numerics"));
        Assert.Empty(others);
        XDocument project = XDocument.Load(Path.Combine(ReferenceTable.Root, "src", "FrontEnd", "FrontEnd.csproj"));
        Assert.Equal(["MathNet.Numerics"], project.Descendants("PackageReference").Select(package => (string)package.Attribute("Include")!));
        Assert.Empty(project.Descendants("ProjectReference"));
    }

    [Fact]
    public void Core_TypesItUses_AreNoFilesConsoleClockCultureOrChance()
    {
        using PEReader file = new(File.OpenRead(Core.Location));
        MetadataReader metadata = file.GetMetadataReader();
        List<string> faults = [];
        foreach (TypeReferenceHandle handle in metadata.TypeReferences)
        {
            TypeReference type = metadata.GetTypeReference(handle);
            string place = metadata.GetString(type.Namespace);
            string name = $"{place}.{metadata.GetString(type.Name)}";
            if (!AllowedTypes.Contains(name) && (ForbiddenNamespaces.Contains(place) || ForbiddenTypes.Contains(name)))
            {
                faults.Add(name);
            }
        }

        foreach (MemberReferenceHandle handle in metadata.MemberReferences)
        {
            MemberReference member = metadata.GetMemberReference(handle);
            if (member.Parent.Kind != HandleKind.TypeReference)
            {
                continue;
            }

            TypeReference type = metadata.GetTypeReference((TypeReferenceHandle)member.Parent);
            string name = $"{metadata.GetString(type.Namespace)}.{metadata.GetString(type.Name)}.{metadata.GetString(member.Name)}";

            // The compiler itself asks for the thread in every iterator; nothing else of the environment is wanted.
            bool environment = name.StartsWith("System.Environment.", StringComparison.Ordinal) && name is not "System.Environment.get_CurrentManagedThreadId";
            if (environment || ForbiddenMembers.Contains(name))
            {
                faults.Add(name);
            }
        }

        Assert.Empty(faults);
    }

    [Fact]
    public void PublicTypes_AllOfThem_AreDescribed()
    {
        XDocument docs = XDocument.Load(Path.ChangeExtension(Core.Location, ".xml"));
        ImmutableHashSet<string> described = [.. docs.Descendants("member").Where(member => member.Element("summary")?.Value.Trim().Length > 0 || member.Element("inheritdoc") is not null).Select(member => (string)member.Attribute("name")!)];
        IEnumerable<string> silent = Core.GetExportedTypes().Select(type => "T:" + type.FullName!.Replace('+', '.')).Where(name => !described.Contains(name));
        Assert.Empty(silent);
    }

    [Fact]
    public void Codes_OfAllMessages_AreDistinctAndOfOneForm()
    {
        string[] codes = [.. typeof(Messages).GetFields(BindingFlags.Public | BindingFlags.Static).Where(field => field.IsLiteral && field.FieldType == typeof(string)).Select(field => (string)field.GetRawConstantValue()!)];
        Assert.NotEmpty(codes);
        Assert.Equal(codes.Length, codes.Distinct(StringComparer.Ordinal).Count());
        Assert.All(codes, code => Assert.Matches(CodeForm(), code));
    }

    [GeneratedRegex("(Hertz|Volts|Ohms|Siemens|Farads|Amperes|Seconds|Kelvins|Celsius|Watts|Metres|Teslas|Degrees|Decibels?)$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex UnitName();

    [GeneratedRegex("^FE[0-9]{4}$", RegexOptions.None, 1000)]
    private static partial Regex CodeForm();
}
