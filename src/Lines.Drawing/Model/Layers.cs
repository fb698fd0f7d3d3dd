namespace Lines.Drawing.Model;

/// <summary>The layers of a sheet.</summary>
internal static class Layers
{
    /// <summary>The layers a sheet's marks lie on, in the order they first appear.</summary>
    /// <exception cref="ArgumentException">A name is empty, has other signs than ASCII letters, digits and hyphens, or carries two inks or colors.</exception>
    public static IReadOnlyList<Layer> Of(Sheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        var found = new List<Layer>();
        var byName = new Dictionary<string, Layer>(StringComparer.OrdinalIgnoreCase);
        foreach (var layer in sheet.Marks.Select(m => m.Layer))
        {
            if (!byName.TryGetValue(layer.Name, out var known))
            {
                RequireName(layer);
                byName.Add(layer.Name, layer);
                found.Add(layer);
            }
            else if (!ReferenceEquals(layer, known) && !Alike(layer, known))
            {
                throw new ArgumentException($"layer \"{layer.Name}\" has two inks on the sheet \"{sheet.Title}\"; give the second a name of its own", nameof(sheet));
            }
        }

        return found;
    }

    private static void RequireName(Layer layer)
    {
        if (layer.Name.Length == 0 || !layer.Name.All(c => char.IsAsciiLetterOrDigit(c) || c == '-'))
            throw new ArgumentException($"layer name \"{layer.Name}\" has other signs than ASCII letters, digits and hyphens", nameof(layer));
        if (layer.Color is < 1 or > 255)
            throw new ArgumentException(Invariant($"layer \"{layer.Name}\" has color number {layer.Color}; 1 to 255 exist"), nameof(layer));
    }

    private static bool Alike(Layer a, Layer b) =>
        string.Equals(a.Name, b.Name, StringComparison.Ordinal) && a.Color == b.Color && a.Ink.Width.Equals(b.Ink.Width)
        && a.Ink.Tone.Equals(b.Ink.Tone) && (a.Ink.Dash ?? []).SequenceEqual(b.Ink.Dash ?? []);
}
