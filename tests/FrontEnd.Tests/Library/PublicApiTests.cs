using System.Reflection;
using FrontEnd.Advice;
using FrontEnd.Catalogue;
using FrontEnd.DesignedFilters;
using FrontEnd.Designs;
using FrontEnd.Filters;
using FrontEnd.Findings;
using FrontEnd.Identity;
using FrontEnd.Quantities;
using FrontEnd.Reporting;
using FrontEnd.Results;
using FrontEnd.Spread;
using FrontEnd.Tests.Reference;
using FrontEnd.Text;
using Xunit;

namespace FrontEnd.Tests.Library;

/// <summary>What the library shows to those who add it to a project: decided, written down, and no more than that.</summary>
public class PublicApiTests
{
    private const BindingFlags Declared = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    private static readonly Assembly Core = typeof(Design).Assembly;

    /// <summary>What was decided to be the surface, besides all that stands in the rooms of designs and of quantities.</summary>
    private static readonly Type[] Decided =
    [
        typeof(DesignFields), typeof(DesignCheck), typeof(Evaluator), typeof(Assessment), typeof(Result), typeof(Finding), typeof(Advisor), typeof(Sensitivity),
        typeof(SpreadRun), typeof(ResultIds), typeof(ResultPattern), typeof(QuantityText),
        typeof(FilterWish), typeof(NotchWish), typeof(FirWish), typeof(CombWish), typeof(SincWish),
        typeof(FilterFigures), typeof(NotchesFigures), typeof(FirFigures), typeof(CombFigures), typeof(SincFigures),
        typeof(DesignedSections), typeof(DesignedNotches), typeof(DesignedComb), typeof(DesignedFir), typeof(DesignedSinc),
    ];

    /// <summary>One file, a line a member: a change of the surface is read before it is committed.</summary>
    /// <remarks>Where a change is meant, run this once with FRONTEND_ACCEPT=1.</remarks>
    [Fact]
    public void Core_WhatItShows_IsWrittenDown()
    {
        Assert.Null(WrittenApi.Difference(Core, Path.Combine(ReferenceTable.Folder, "api", "core.txt")));
    }

    /// <summary>A type that no part of the surface names is of no use to a caller, and a promise that nobody meant to give.</summary>
    [Fact]
    public void Core_TypesItShows_AreTheSurfaceOrNamedByIt()
    {
        HashSet<Type> shown = [.. Core.GetExportedTypes().Where(type => !type.IsNested)];
        HashSet<Type> reached = [];
        Queue<Type> open = new();
        foreach (Type type in shown.Where(type => Decided.Contains(type) || type.Namespace == typeof(Design).Namespace || type.Namespace == typeof(Voltage).Namespace))
        {
            Reach(type);
        }

        while (open.TryDequeue(out Type? type))
        {
            foreach (Type named in Named(type))
            {
                Reach(named);
            }

            // What stands in a list of the abstract record, such as the stages, are its variants.
            foreach (Type variant in shown.Where(one => one.BaseType == type))
            {
                Reach(variant);
            }
        }

        Assert.Equal([], Decided.Except(shown).Select(type => type.FullName!));
        Assert.Equal([], shown.Except(reached).Select(type => $"{type.FullName}: internal, or part of the surface").Order());

        void Reach(Type type)
        {
            foreach (Type part in Parts(type).Where(part => shown.Contains(part) && reached.Add(part)))
            {
                open.Enqueue(part);
            }
        }
    }

    /// <summary>The types that a type's visible members name.</summary>
    private static IEnumerable<Type> Named(Type type)
    {
        IEnumerable<MethodBase> calls = type.GetMethods(Declared).Cast<MethodBase>().Concat(type.GetConstructors(Declared)).Where(call => call.IsPublic || call.IsFamily || call.IsFamilyOrAssembly);
        IEnumerable<Type> named = calls.SelectMany(call => call.GetParameters().Select(parameter => parameter.ParameterType).Append(call is MethodInfo method ? method.ReturnType : typeof(void)))
            .Concat(type.GetFields(Declared).Where(field => field.IsPublic || field.IsFamily || field.IsFamilyOrAssembly).Select(field => field.FieldType))
            .Concat(type.BaseType is { } above ? [above] : [])
            .Concat(type.IsInterface ? type.GetInterfaces() : []);
        return named.Concat(type.GetNestedTypes(Declared).Where(nested => nested.IsNestedPublic || nested.IsNestedFamily || nested.IsNestedFamORAssem).SelectMany(Named));
    }

    /// <summary>A list's element, what a generic type is made of, and the type around a nested one.</summary>
    private static IEnumerable<Type> Parts(Type type) =>
        type.HasElementType ? Parts(type.GetElementType()!)
        : type.IsGenericParameter ? type.GetGenericParameterConstraints().SelectMany(Parts)
        : type.IsConstructedGenericType ? type.GetGenericArguments().SelectMany(Parts).Concat(Parts(type.GetGenericTypeDefinition()))
        : type.DeclaringType is { } outer ? Parts(outer)
        : [type];
}
