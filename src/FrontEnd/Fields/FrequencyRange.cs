using System.Runtime.InteropServices;

namespace FrontEnd.Fields;

/// <summary>Two frequencies as a field holds them: <c>["0.5 Hz", "40 Hz"]</c>.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct FrequencyRange(Frequency Low, Frequency High);
