using System.Reflection;
using System.Reflection.Emit;
using FrontEnd.Designs;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>What code refers to and what can be reached from it, read from the compiled methods. Follows calls, delegates, overrides and what the compiler makes of iterators; only into our own assemblies.</summary>
internal static class Reached
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields(BindingFlags.Public | BindingFlags.Static)
        .Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    private static readonly Assembly[] Ours = [typeof(Design).Assembly, typeof(Documents.DesignDocument).Assembly, typeof(App.Commands.CommandLine).Assembly, typeof(FrontEnd.Terminal.Updater).Assembly];

    private static readonly ILookup<MethodBase, MethodBase> Overrides = FindOverrides();

    /// <summary>Each member of a foreign assembly that can be reached, with the method of ours that refers to it.</summary>
    public static IReadOnlyList<(MemberInfo Member, MethodBase By)> From(params Type[] types)
    {
        Queue<MethodBase> open = new(types.SelectMany(MethodsOf));
        HashSet<MethodBase> seen = [.. open];
        List<(MemberInfo, MethodBase)> foreign = [];
        void Add(MethodBase method)
        {
            if (seen.Add(method))
            {
                open.Enqueue(method);
            }
        }

        while (open.TryDequeue(out MethodBase? method))
        {
            foreach (MemberInfo member in MembersIn(method))
            {
                MemberInfo plain = Plain(member);
                if (plain.DeclaringType is not { } owner || !Ours.Contains(owner.Assembly))
                {
                    foreign.Add((plain, method));
                    continue;
                }

                // The first touch of a type runs what sets its static fields; an iterator's or a lambda's body belongs to whoever makes it.
                owner.GetConstructors(BindingFlags.NonPublic | BindingFlags.Static).ToList().ForEach(Add);
                if (plain is ConstructorInfo && owner.Name.StartsWith('<') && owner.Name.Contains(">d__", StringComparison.Ordinal))
                {
                    MethodsOf(owner).ToList().ForEach(Add);
                }

                if (plain is MethodBase called)
                {
                    Add(called);
                    Overrides[called].ToList().ForEach(Add);
                }
            }
        }

        return foreign;
    }

    /// <summary>Every member of a foreign assembly that our code refers to, with the method that does.</summary>
    public static IEnumerable<(MemberInfo Member, MethodBase By)> OutsideOurs() =>
        from method in Ours.SelectMany(assembly => assembly.GetTypes()).SelectMany(MethodsOf)
        from member in MembersIn(method)
        let plain = Plain(member)
        where plain.DeclaringType is not { } owner || !Ours.Contains(owner.Assembly)
        select (plain, method);

    /// <summary>The methods of ours that make one of a type.</summary>
    public static IEnumerable<MethodBase> Makers(Type type) =>
        Ours.SelectMany(assembly => assembly.GetTypes()).SelectMany(MethodsOf)
            .Where(method => MembersIn(method).Any(member => member is ConstructorInfo made && made.DeclaringType == type));

    /// <summary>Everything that a type itself can be called for.</summary>
    public static IEnumerable<MethodBase> MethodsOf(Type type) => type.GetMethods(All).Cast<MethodBase>().Concat(type.GetConstructors(All));

    /// <summary>The types of ours that a type's code, fields and signatures refer to.</summary>
    public static IEnumerable<Type> TypesIn(Type type)
    {
        IEnumerable<Type> used = MethodsOf(type).SelectMany(method => MembersIn(method).Select(member => member as Type ?? member.DeclaringType!)
            .Concat(method.GetParameters().Select(parameter => parameter.ParameterType))
            .Concat(method is MethodInfo info ? [info.ReturnType] : []));
        return used.Concat(type.GetFields(All).Select(field => field.FieldType)).Append(type.BaseType!).Where(one => one is not null).SelectMany(Parts)
            .Where(one => Ours.Contains(one.Assembly)).Distinct();
    }

    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!) : type.IsGenericType ? type.GetGenericArguments().SelectMany(Parts).Append(type) : [type];

    private static ILookup<MethodBase, MethodBase> FindOverrides()
    {
        List<(MethodBase Base, MethodBase Over)> pairs = [];
        foreach (Type type in Ours.SelectMany(assembly => assembly.GetTypes()).Where(type => !type.IsInterface))
        {
            foreach (MethodInfo method in type.GetMethods(All).Where(method => method.IsVirtual && method.GetBaseDefinition() != method))
            {
                for (Type? above = type.BaseType; above is not null && Ours.Contains(above.Assembly); above = above.BaseType)
                {
                    Type plain = above.IsGenericType ? above.GetGenericTypeDefinition() : above;
                    pairs.AddRange(plain.GetMethods(All).Where(one => one.IsVirtual && one.Name == method.Name && one.GetParameters().Length == method.GetParameters().Length)
                        .Select(one => ((MethodBase)one, (MethodBase)method)));
                }
            }

            foreach (Type contract in type.GetInterfaces().Where(one => Ours.Contains(one.Assembly) && !type.IsGenericTypeDefinition))
            {
                InterfaceMapping map = type.GetInterfaceMap(contract);
                pairs.AddRange(map.InterfaceMethods.Zip(map.TargetMethods).Where(pair => pair.Second is not null).Select(pair => ((MethodBase)Plain(pair.First), (MethodBase)Plain(pair.Second))));
            }
        }

        return pairs.ToLookup(pair => pair.Base, pair => pair.Over);
    }

    /// <summary>The member's definition where it is one of a constructed generic.</summary>
    private static MemberInfo Plain(MemberInfo member)
    {
        if (member is MethodInfo { IsGenericMethod: true } generic)
        {
            member = generic.GetGenericMethodDefinition();
        }

        return member.DeclaringType is { IsConstructedGenericType: true } && member is not Type ? member.Module.ResolveMember(member.MetadataToken)! : member;
    }

    private static IEnumerable<MemberInfo> MembersIn(MethodBase method)
    {
        if (method.GetMethodBody()?.GetILAsByteArray() is not { } code)
        {
            yield break;
        }

        Type[]? ofType = method.DeclaringType is { IsGenericType: true } owner ? owner.GetGenericArguments() : null;
        Type[]? ofMethod = method.IsGenericMethod ? method.GetGenericArguments() : null;
        for (int at = 0; at < code.Length;)
        {
            short value = code[at++];
            if (value == 0xFE)
            {
                value = unchecked((short)(0xFE00 | code[at++]));
            }

            OpCode operation = Codes[value];
            if (operation.OperandType is OperandType.InlineMethod or OperandType.InlineField or OperandType.InlineType or OperandType.InlineTok)
            {
                yield return method.Module.ResolveMember(BitConverter.ToInt32(code, at), ofType, ofMethod)!;
            }

            at += operation.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(code, at)),
                _ => 4,
            };
        }
    }
}
