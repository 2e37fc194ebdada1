namespace FrontEnd.Documents.Reading;

/// <summary>Which spelling of keys and values a file uses.</summary>
public enum DocumentFormat
{
    /// <summary>TOML: words with hyphens, quantities as texts with units.</summary>
    Toml,

    /// <summary>JSON: the plain-number form, bare numbers in SI units.</summary>
    Json,
}
