namespace FrontEnd.Fields;

/// <summary>Short ways to write a row of the catalogue; the kind follows from the property's type.</summary>
internal static class Make
{
    public const string Practice = "common practice, no source";
    public const string Memory = "from memory";
    public const string Derived = "derived";
    public const string ByDesign = "the field is absent unless given";

    /// <summary>A field that always has a value.</summary>
    public static Field<TOwner> Value<TOwner, TValue>(
        string key, string json, FieldRange? range, string defaultText, string source, string meaning,
        Func<TOwner, TValue> get, Func<TOwner, TValue, TOwner> set, bool safety = false)
        where TValue : notnull => new()
        {
            Key = key,
            JsonKey = json,
            Kind = FieldKinds.Of<TValue>().Kind,
            Quantity = FieldKinds.Of<TValue>().Quantity,
            Meaning = meaning,
            DefaultText = defaultText,
            DefaultSource = source,
            Range = range,
            Safety = safety,
            Get = owner => get(owner),
            Set = (owner, value) => set(owner, (TValue)value!),
        };

    /// <summary>A field that may be left out; <paramref name="nullWord"/> says so in a design file.</summary>
    public static Field<TOwner> Maybe<TOwner, TValue>(
        string key, string json, FieldRange? range, string nullWord, string defaultText, string source, string meaning,
        Func<TOwner, TValue?> get, Func<TOwner, TValue?, TOwner> set)
        where TValue : struct => new()
        {
            Key = key,
            JsonKey = json,
            Kind = FieldKinds.Of<TValue>().Kind,
            Quantity = FieldKinds.Of<TValue>().Quantity,
            Meaning = meaning,
            DefaultText = defaultText,
            DefaultSource = source,
            DefaultIsValue = string.Equals(defaultText, nullWord, StringComparison.Ordinal),
            Range = range,
            NullWord = nullWord,
            Get = owner => get(owner),
            Set = (owner, value) => set(owner, (TValue?)value),
        };

    /// <summary>One of a few words.</summary>
    public static Field<TOwner> Word<TOwner, TValue>(
        string key, string json, string defaultText, string source, string meaning, IReadOnlyList<ChoiceWord> words,
        Func<TOwner, TValue> get, Func<TOwner, TValue, TOwner> set)
        where TValue : struct, Enum => new()
        {
            Key = key,
            JsonKey = json,
            Kind = FieldKind.Choice,
            Meaning = meaning,
            DefaultText = defaultText,
            DefaultSource = source,
            Choices = words,
            Get = owner => get(owner),
            Set = (owner, value) => set(owner, (TValue)value!),
        };

    public static Field<TOwner> Wording<TOwner>(string key, string defaultText, string meaning, Func<TOwner, string> get,
        Func<TOwner, string, TOwner> set) => new()
    {
        Key = key,
        JsonKey = key.Replace('-', '_'),
        Kind = FieldKind.Text,
        Meaning = meaning,
        DefaultText = defaultText,
        DefaultSource = Practice,
        Get = owner => get(owner),
        Set = (owner, value) => set(owner, (string)value!),
    };

    /// <summary>The ranges of some fields of a part, in the order of the fields.</summary>
    public static Field<TOwner> Ranges<TOwner>(IReadOnlyList<Field<TOwner>> fields, IReadOnlyList<string> keys,
        Func<TOwner, PartRanges> get, Func<TOwner, PartRanges, TOwner> set) => new()
    {
        Key = "ranges",
        JsonKey = "ranges",
        Kind = FieldKind.Ranges,
        Ranged = [.. fields.Where(field => keys.Contains(field.Key, StringComparer.Ordinal))],
        Meaning = "least and greatest value for any of the keys here; used only by a spread run",
        DefaultText = "",
        DefaultSource = "no range unless given",
        Get = owner => get(owner),
        Set = (owner, value) => set(owner, (PartRanges)value!),
    };

    public static Field<TOwner> Card<TOwner>(CardClass cardClass, Func<TOwner, string> get, Func<TOwner, string, TOwner> set) => new()
    {
        Key = "card",
        JsonKey = "card",
        Kind = FieldKind.Card,
        CardClass = cardClass,
        Meaning = "part card whose values apply where none is given in line",
        DefaultText = "",
        DefaultSource = "no card unless given",
        Get = owner => get(owner),
        Set = (owner, value) => set(owner, (string)value!),
    };

    /// <summary>The field with what is usual for it where nobody knows the value.</summary>
    public static Field<TOwner> Usually<TOwner>(this Field<TOwner> field, double least, double greatest, KnownBy by = KnownBy.Maker,
        string source = Practice, bool whenBought = true) =>
        field with { Usual = new UsualRange(least, greatest, source, by, whenBought) };

    /// <summary>The choice with all of its words usual.</summary>
    public static Field<TOwner> UsuallyAny<TOwner>(this Field<TOwner> field) => field.Usually(0, field.Choices.Count - 1);

    /// <summary>A field of the base record as one of the derived record.</summary>
    public static Field<TDerived> AsA<TDerived, TBase>(Field<TBase> field)
        where TDerived : class, TBase
        where TBase : class =>
        field.Redirected<TDerived>(field.Key, field.JsonKey, owner =>
            field.Get(owner), (owner, value) => (TDerived)field.Set(owner, value));
}
