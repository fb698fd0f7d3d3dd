using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>What stands before the entities of a file of release 12: the unit in a comment, header, tables. No handles, owners or markers are known yet.</summary>
internal static class DxfR12Tables
{
    /// <summary>The line type that is not broken, as release 12 calls it.</summary>
    private const string Continuous = "CONTINUOUS";

    /// <summary>Writes everything before the entities.</summary>
    public static void Write(DxfText dxf, DxfUnit unit, IReadOnlyList<Layer> layers, double perMillimeter, Point2 extent)
    {
        dxf.Put(999, DxfUnits.Comment(unit));
        dxf.Begin("HEADER");
        dxf.Variable("ACADVER", 1, "AC1009");
        dxf.Put(9, "$INSBASE").Point(10, new Point2(0, 0), 0);
        dxf.Put(9, "$EXTMIN").Point(10, new Point2(0, 0), 0);
        dxf.Put(9, "$EXTMAX").Point(10, extent, 0);
        dxf.Put(9, "$LIMMIN").Point(10, new Point2(0, 0));
        dxf.Put(9, "$LIMMAX").Point(10, extent);
        dxf.Put(9, "$LTSCALE").Put(40, 1.0);
        dxf.Put(9, "$LUNITS").Put(70, 2);
        dxf.End();
        dxf.Begin("TABLES");
        WriteLineTypes(dxf, layers, perMillimeter);
        WriteLayers(dxf, layers);
        Begin(dxf, "STYLE", 1);
        Record(dxf, "STYLE", "STANDARD").Put(40, 0.0).Put(41, 1.0).Put(50, 0.0).Put(71, 0).Put(42, 2.5 * perMillimeter).Put(3, "txt").Put(4, "");
        End(dxf);
        dxf.End();
        dxf.Begin("BLOCKS");
        dxf.End();
    }

    private static void WriteLineTypes(DxfText dxf, IReadOnlyList<Layer> layers, double perMillimeter)
    {
        var dashed = layers.Where(l => l.Ink.Dash is { Count: > 0 }).ToList();
        Begin(dxf, "LTYPE", 1 + dashed.Count);
        DxfDashes.Write(Record(dxf, "LTYPE", Continuous), [], withKinds: false);
        foreach (var layer in dashed)
            DxfDashes.Write(Record(dxf, "LTYPE", DxfDashes.NameOf(layer, Continuous)), [.. layer.Ink.Dash!.Select(d => d * perMillimeter)], withKinds: false);
        End(dxf);
    }

    private static void WriteLayers(DxfText dxf, IReadOnlyList<Layer> layers)
    {
        var named = layers.Where(l => !string.Equals(l.Name, "0", StringComparison.Ordinal)).ToList();
        Begin(dxf, "LAYER", named.Count + 1);
        Record(dxf, "LAYER", "0").Put(62, 7).Put(6, Continuous);
        foreach (var layer in named)
            Record(dxf, "LAYER", layer.Name).Put(62, layer.Color).Put(6, DxfDashes.NameOf(layer, Continuous));
        End(dxf);
    }

    private static void Begin(DxfText dxf, string table, int records) => dxf.Put(0, "TABLE").Put(2, table).Put(70, records);

    private static void End(DxfText dxf) => dxf.Put(0, "ENDTAB");

    private static DxfText Record(DxfText dxf, string type, string name) => dxf.Put(0, type).Put(2, name).Put(70, 0);
}
