using Lines.Drawing.Model;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>Writes a sheet as DXF for routers and drawing programs: version AC1015, or AC1009 for old controllers.</summary>
/// <remarks>
/// <para><b>Frame.</b> The sheet's own: x to the right, y up, origin at its lower left corner, 1:1.</para>
/// <para><b>Method.</b> Lines, polylines whose arcs are bulges, and circles on layers that are drilled, nothing else: these are read everywhere. A closed path is
/// one closed polyline that does not repeat its first vertex. Lettering is strokes on its layer. A filled area is its
/// outline. Layers carry the sheet's colors, line widths and dashes. Handles count up from 1: the same sheet gives the same text.</para>
/// <para><b>Accuracy.</b> Coordinates to 1e-8 of the unit; chords in place of arcs as near as <see cref="DxfSettings.Chords"/>.</para>
/// </remarks>
public static class DxfFile
{
    /// <summary>The file's text, ASCII, line ends LF.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="settings">Unit, version and whether arcs are drawn; null for <see cref="DxfSettings.Usual"/>.</param>
    /// <returns>The file.</returns>
    /// <exception cref="ArgumentException">A mark cannot be drawn, a layer's name is no name, or one name carries two inks.</exception>
    public static string Write(Sheet sheet, DxfSettings? settings = null)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        settings ??= DxfSettings.Usual;
        var layers = Layers.Of(sheet);
        var perMillimeter = settings.Unit.PerMillimeter();
        var extent = new Point2(sheet.Width * perMillimeter, sheet.Height * perMillimeter);
        var body = new DxfText();
        if (settings.Version == DxfVersion.R12)
        {
            DxfR12Tables.Write(body, settings.Unit, layers, perMillimeter, extent);
            WriteEntities(body, null, sheet, settings);
            return body.Put(0, "EOF").ToString();
        }

        var owners = new DxfOwners(body);
        DxfTables.Write(body, owners, layers, perMillimeter, extent);
        DxfTables.WriteBlocks(body, owners);
        WriteEntities(body, owners.ModelSpace, sheet, settings);
        DxfObjects.Write(body, owners, extent);
        body.Put(0, "EOF");
        var head = new DxfText();
        WriteHeader(head, settings.Unit, extent, body.NextHandle());
        return head.Append(body).ToString();
    }

    private static void WriteHeader(DxfText dxf, DxfUnit unit, Point2 extent, string nextHandle)
    {
        dxf.Begin("HEADER");
        dxf.Variable("ACADVER", 1, "AC1015");
        dxf.Variable("DWGCODEPAGE", 3, "ANSI_1252");
        dxf.Variable("HANDSEED", 5, nextHandle);
        dxf.Put(9, "$EXTMIN").Point(10, new Point2(0, 0), 0);
        dxf.Put(9, "$EXTMAX").Point(10, extent, 0);
        dxf.Put(9, "$LIMMIN").Point(10, new Point2(0, 0));
        dxf.Put(9, "$LIMMAX").Point(10, extent);
        dxf.Put(9, "$LTSCALE").Put(40, 1.0);
        dxf.Put(9, "$INSUNITS").Put(70, (int)unit);
        dxf.Put(9, "$MEASUREMENT").Put(70, unit == DxfUnit.Inch ? 0 : 1);
        dxf.Put(9, "$LUNITS").Put(70, 2);
        dxf.Put(9, "$LWDISPLAY").Put(290, 1);
        dxf.End();
        DxfObjects.WriteClasses(dxf);
    }

    private static void WriteEntities(DxfText dxf, string? owner, Sheet sheet, DxfSettings settings)
    {
        dxf.Begin("ENTITIES");
        var entities = new DxfEntities(dxf, owner, settings);
        foreach (var mark in sheet.Marks)
        {
            switch (mark)
            {
                case PathMark path:
                    entities.Put(path.Path, mark.Layer);
                    break;
                case TextMark text:
                    foreach (var stroke in StrokeLettering.Strokes(text))
                        entities.Put(stroke, mark.Layer);
                    break;
                default:
                    throw new ArgumentException($"a {mark.GetType().Name} cannot be drawn in a DXF", nameof(sheet));
            }
        }

        dxf.End();
    }
}

/// <summary>The unit of a DXF file's lengths; the values are those of its variable $INSUNITS.</summary>
public enum DxfUnit
{
    /// <summary>No unit stated: refused.</summary>
    None = 0,

    /// <summary>Inches.</summary>
    Inch = 1,

    /// <summary>Millimeters.</summary>
    Millimeter = 4,
}
