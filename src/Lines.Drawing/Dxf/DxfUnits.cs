namespace Lines.Drawing.Dxf;

/// <summary>The units of DXF files.</summary>
internal static class DxfUnits
{
    /// <summary>Lengths of the unit in a millimeter.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The unit is none that is written.</exception>
    public static double PerMillimeter(this DxfUnit unit) => unit switch
    {
        DxfUnit.Millimeter => 1,
        DxfUnit.Inch => 1 / 25.4,
        _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "no such unit"),
    };

    /// <summary>The comment that states the unit where the version has no variable for it.</summary>
    public static string Comment(DxfUnit unit) => unit == DxfUnit.Inch ? "lengths in inches" : "lengths in millimeters";
}
