namespace Lines.Design.Text;

/// <summary>Reads the words people write where TOML wants true or false.</summary>
internal static class YesOrNo
{
    /// <summary><c>true</c> or <c>false</c> as it would be written, or null where the word is neither.</summary>
    public static string? Read(string word) => word.Trim().ToUpperInvariant() switch
    {
        "YES" or "ON" or "TRUE" or "Y" => "true",
        "NO" or "OFF" or "FALSE" or "N" => "false",
        _ => null,
    };
}
