using System.Text;

namespace FrontEnd.Text;

/// <summary>A name as it stands in keys and result ids.</summary>
internal static class Slug
{
    /// <summary>Lower case, every run of other characters than letters and digits one hyphen, none at the ends; "" where the name has no
    /// letter and no digit.</summary>
    public static string Of(string name)
    {
        StringBuilder slug = new(name.Length);
        foreach (char letter in name)
        {
            if (char.IsLetterOrDigit(letter))
            {
                slug.Append(char.ToLowerInvariant(letter));
            }
            else if (slug.Length > 0 && slug[^1] != '-')
            {
                slug.Append('-');
            }
        }

        return slug.ToString().TrimEnd('-');
    }
}
