namespace Lines.Drawing.Dxf;

/// <summary>How a DXF file is written.</summary>
public sealed record DxfSettings
{
    /// <summary>Millimeters, arcs as bulges, the version of 2000.</summary>
    public static DxfSettings Usual { get; } = new();

    /// <summary>The unit of the file's lengths; the drawing is full size in either.</summary>
    public DxfUnit Unit { get; init; } = DxfUnit.Millimeter;

    /// <summary>The version of the format.</summary>
    public DxfVersion Version { get; init; } = DxfVersion.R2000;

    /// <summary>Greatest distance [mm] of the straight lines drawn in place of arcs, for readers that pass over bulges; null draws arcs. Drilled circles stay circles.</summary>
    public double? Chords { get; init; }
}

/// <summary>A version of the format.</summary>
public enum DxfVersion
{
    /// <summary>AC1015, of the year 2000: units stated, polylines in one record.</summary>
    R2000,

    /// <summary>AC1009, release 12: for old controllers. It has no variable for the unit, so a comment at its head states it.</summary>
    R12,
}
