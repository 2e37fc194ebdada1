namespace FrontEnd.Quantities;

/// <summary>A series of preferred numbers of IEC 60063; the number is how many there are in a decade.</summary>
public enum PreferredSeries
{
    E3 = 3,
    E6 = 6,
    E12 = 12,
    E24 = 24,
    E48 = 48,
    E96 = 96,
    E192 = 192,
}
