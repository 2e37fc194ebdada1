using System.Reflection;
using System.Reflection.Emit;

namespace FrontEnd.App.Tests.Architecture;

/// <summary>Every type that the compiled code of a type names: in its head, its members' signatures and the instructions of its methods.</summary>
internal static class TypeReferences
{
    private const BindingFlags All = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Dictionary<short, OpCode> Instructions = typeof(OpCodes)
        .GetFields(BindingFlags.Public | BindingFlags.Static).Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    /// <summary>The types named by one type, without repetition; generic arguments and elements of arrays are taken out of what holds them.</summary>
    public static HashSet<Type> Of(Type type)
    {
        HashSet<Type> found = [];
        Add(type.BaseType, found);
        foreach (Type one in type.GetInterfaces())
        {
            Add(one, found);
        }

        foreach (FieldInfo field in type.GetFields(All))
        {
            Add(field.FieldType, found);
        }

        foreach (MethodBase method in type.GetMethods(All).Concat<MethodBase>(type.GetConstructors(All)))
        {
            AddSignature(method, found);
            AddBody(method, found);
        }

        return found;
    }

    private static void Add(Type? type, HashSet<Type> found)
    {
        if (type is null || type.IsGenericParameter)
        {
            return;
        }

        if (type.HasElementType)
        {
            Add(type.GetElementType(), found);
            return;
        }

        foreach (Type argument in type.GetGenericArguments())
        {
            Add(argument, found);
        }

        found.Add(type.IsGenericType ? type.GetGenericTypeDefinition() : type);
    }

    private static void AddSignature(MethodBase method, HashSet<Type> found)
    {
        Add((method as MethodInfo)?.ReturnType, found);
        foreach (ParameterInfo parameter in method.GetParameters())
        {
            Add(parameter.ParameterType, found);
        }
    }

    private static void AddBody(MethodBase method, HashSet<Type> found)
    {
        if (method.GetMethodBody() is not { } body || body.GetILAsByteArray() is not { } bytes)
        {
            return;
        }

        foreach (LocalVariableInfo local in body.LocalVariables)
        {
            Add(local.LocalType, found);
        }

        Type[]? ofType = method.DeclaringType is { IsGenericType: true } owner ? owner.GetGenericArguments() : null;
        Type[]? ofMethod = method is MethodInfo { IsGenericMethod: true } generic ? generic.GetGenericArguments() : null;
        for (int at = 0; at < bytes.Length;)
        {
            short value = bytes[at++];
            if (value == 0xFE)
            {
                value = unchecked((short)(0xFE00 | bytes[at++]));
            }

            OpCode code = Instructions[value];
            if (code.OperandType is OperandType.InlineField or OperandType.InlineMethod or OperandType.InlineTok or OperandType.InlineType)
            {
                AddMember(method.Module.ResolveMember(BitConverter.ToInt32(bytes, at), ofType, ofMethod), found);
            }

            at += Size(code.OperandType, bytes, at);
        }
    }

    private static void AddMember(MemberInfo? member, HashSet<Type> found)
    {
        Add(member as Type ?? member?.DeclaringType, found);
        if (member is FieldInfo field)
        {
            Add(field.FieldType, found);
        }

        if (member is MethodBase method)
        {
            AddSignature(method, found);
            foreach (Type argument in method.IsGenericMethod ? method.GetGenericArguments() : [])
            {
                Add(argument, found);
            }
        }
    }

    private static int Size(OperandType type, byte[] bytes, int at) => type switch
    {
        OperandType.InlineNone => 0,
        OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
        OperandType.InlineVar => 2,
        OperandType.InlineI8 or OperandType.InlineR => 8,
        OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(bytes, at)),
        _ => 4,
    };
}
