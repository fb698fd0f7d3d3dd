using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>The nine tables and the two blocks every file has.</summary>
internal static class DxfTables
{
    /// <summary>Line widths the version knows [1/100 mm].</summary>
    private static readonly int[] LineWeights = [5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

    /// <summary>Writes the section TABLES.</summary>
    public static void Write(DxfText dxf, DxfOwners owners, IReadOnlyList<Layer> layers, double perMillimeter, Point2 extent)
    {
        dxf.Begin("TABLES");
        WriteViewport(dxf, extent);
        WriteLineTypes(dxf, layers, perMillimeter);
        WriteLayers(dxf, owners, layers);
        WriteStyle(dxf);
        Begin(dxf, "VIEW", 0);
        End(dxf);
        Begin(dxf, "UCS", 0);
        End(dxf);
        Record(dxf, "APPID", Begin(dxf, "APPID", 1), "AcDbRegAppTableRecord", "ACAD").Put(70, 0);
        End(dxf);
        WriteDimensionStyle(dxf);
        WriteBlockRecords(dxf, owners);
        dxf.End();
    }

    /// <summary>Writes the section BLOCKS: the two spaces, both empty of their own.</summary>
    public static void WriteBlocks(DxfText dxf, DxfOwners owners)
    {
        dxf.Begin("BLOCKS");
        Block(dxf, "*Model_Space", owners.ModelSpace, paper: false);
        Block(dxf, "*Paper_Space", owners.PaperSpace, paper: true);
        dxf.End();
    }

    private static void Block(DxfText dxf, string name, string owner, bool paper)
    {
        Head("BLOCK").Put(100, "AcDbBlockBegin").Put(2, name).Put(70, 0).Point(10, new Point2(0, 0), 0).Put(3, name).Put(1, "");
        Head("ENDBLK").Put(100, "AcDbBlockEnd");

        DxfText Head(string type)
        {
            dxf.Object(type, dxf.NextHandle(), owner).Put(100, "AcDbEntity");
            return (paper ? dxf.Put(67, 1) : dxf).Put(8, "0");
        }
    }

    private static string Begin(DxfText dxf, string table, int records)
    {
        var handle = dxf.NextHandle();
        dxf.Put(0, "TABLE").Put(2, table).Put(5, handle).Put(330, "0").Put(100, "AcDbSymbolTable").Put(70, records);
        return handle;
    }

    private static void End(DxfText dxf) => dxf.Put(0, "ENDTAB");

    private static DxfText Record(DxfText dxf, string type, string table, string marker, string name, string? handle = null) =>
        dxf.Object(type, handle ?? dxf.NextHandle(), table).Put(100, "AcDbSymbolTableRecord").Put(100, marker).Put(2, name);

    private static void WriteViewport(DxfText dxf, Point2 extent)
    {
        var origin = new Point2(0, 0);
        Record(dxf, "VPORT", Begin(dxf, "VPORT", 1), "AcDbViewportTableRecord", "*Active").Put(70, 0)
            .Point(10, origin).Point(11, new Point2(1, 1)).Point(12, new Point2(extent.X / 2, extent.Y / 2))
            .Point(13, origin).Point(14, new Point2(10, 10)).Point(15, new Point2(10, 10))
            .Point(16, origin, 1).Point(17, origin, 0)
            .Put(40, extent.Y * 1.05).Put(41, 1.5).Put(42, 50.0).Put(43, 0.0).Put(44, 0.0).Put(50, 0.0).Put(51, 0.0)
            .Put(71, 0).Put(72, 1000).Put(73, 1).Put(74, 3).Put(75, 0).Put(76, 0).Put(77, 0).Put(78, 0);
        End(dxf);
    }

    private static void WriteLineTypes(DxfText dxf, IReadOnlyList<Layer> layers, double perMillimeter)
    {
        var dashed = layers.Where(l => l.Ink.Dash is { Count: > 0 }).ToList();
        var table = Begin(dxf, "LTYPE", 3 + dashed.Count);
        foreach (var name in (string[])["ByBlock", "ByLayer", "Continuous"])
            LineType(dxf, table, name, []);
        foreach (var layer in dashed)
            LineType(dxf, table, LineTypeName(layer), [.. layer.Ink.Dash!.Select(d => d * perMillimeter)]);
        End(dxf);
    }

    private static void LineType(DxfText dxf, string table, string name, IReadOnlyList<double> dash) =>
        DxfDashes.Write(Record(dxf, "LTYPE", table, "AcDbLinetypeTableRecord", name).Put(70, 0), dash, withKinds: true);

    private static string LineTypeName(Layer layer) => DxfDashes.NameOf(layer, "Continuous");

    private static void WriteLayers(DxfText dxf, DxfOwners owners, IReadOnlyList<Layer> layers)
    {
        var named = layers.Where(l => !string.Equals(l.Name, "0", StringComparison.Ordinal)).ToList();
        var zero = layers.FirstOrDefault(l => string.Equals(l.Name, "0", StringComparison.Ordinal)) ?? new Layer("0", new Ink(0.25));
        var table = Begin(dxf, "LAYER", named.Count + 1);
        foreach (var layer in named.Prepend(zero))
        {
            Record(dxf, "LAYER", table, "AcDbLayerTableRecord", layer.Name).Put(70, 0).Put(62, layer.Color).Put(6, LineTypeName(layer))
                .Put(370, LineWeight(layer.Ink)).Put(390, owners.PlotStyle);
        }

        End(dxf);
    }

    private static int LineWeight(Ink ink) => LineWeights.MinBy(w => Math.Abs(w - (ink.Width * 100)));

    private static void WriteStyle(DxfText dxf)
    {
        Record(dxf, "STYLE", Begin(dxf, "STYLE", 1), "AcDbTextStyleTableRecord", "Standard").Put(70, 0)
            .Put(40, 0.0).Put(41, 1.0).Put(50, 0.0).Put(71, 0).Put(42, 2.5).Put(3, "txt").Put(4, "");
        End(dxf);
    }

    private static void WriteDimensionStyle(DxfText dxf)
    {
        var table = Begin(dxf, "DIMSTYLE", 1);
        dxf.Put(100, "AcDbDimStyleTable").Put(71, 0);
        // This record alone carries its handle in group 105.
        dxf.Put(0, "DIMSTYLE").Put(105, dxf.NextHandle()).Put(330, table).Put(100, "AcDbSymbolTableRecord")
            .Put(100, "AcDbDimStyleTableRecord").Put(2, "Standard").Put(70, 0);
        End(dxf);
    }

    private static void WriteBlockRecords(DxfText dxf, DxfOwners owners)
    {
        var table = Begin(dxf, "BLOCK_RECORD", 2);
        Record(dxf, "BLOCK_RECORD", table, "AcDbBlockTableRecord", "*Model_Space", owners.ModelSpace).Put(340, owners.ModelLayout);
        Record(dxf, "BLOCK_RECORD", table, "AcDbBlockTableRecord", "*Paper_Space", owners.PaperSpace).Put(340, owners.PaperLayout);
        End(dxf);
    }
}
