using Lines.Drawing.Model;

namespace Lines.Drawing.Dxf;

/// <summary>The broken lines of layers, alike in every version.</summary>
internal static class DxfDashes
{
    /// <summary>Writes the pattern of a line type behind its name.</summary>
    /// <param name="record">The record, its name and flags written.</param>
    /// <param name="dash">Lengths of dash and gap in turn, in the file's unit; none is an unbroken line.</param>
    /// <param name="withKinds">Whether each length is followed by what it is made of, as versions above release 12 want.</param>
    public static void Write(DxfText record, IReadOnlyList<double> dash, bool withKinds)
    {
        // Dash and gap alternate; a pattern of odd length takes two turns until it repeats.
        var pattern = dash.Count % 2 == 0 ? dash : [.. dash, .. dash];
        record.Put(3, "").Put(72, 65).Put(73, pattern.Count).Put(40, pattern.Sum());
        for (var i = 0; i < pattern.Count; i++)
        {
            record.Put(49, i % 2 == 0 ? pattern[i] : -pattern[i]);
            if (withKinds)
                record.Put(74, 0);
        }
    }

    /// <summary>Name of a layer's line type.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="continuous">Name of the unbroken one.</param>
    public static string NameOf(Layer layer, string continuous) => layer.Ink.Dash is { Count: > 0 } ? layer.Name + "-dashes" : continuous;
}
