namespace FrontEnd;

/// <summary>Placeholder so that references compile; the catalogue follows.</summary>
public static class DesignFields;
