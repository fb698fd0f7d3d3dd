using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>The sections CLASSES and OBJECTS: the root dictionary, the two layouts, the plot style.</summary>
internal static class DxfObjects
{
    /// <summary>Writes the section CLASSES: the types of object that the version does not number.</summary>
    public static void WriteClasses(DxfText dxf)
    {
        dxf.Begin("CLASSES");
        Class("ACDBDICTIONARYWDFLT", "AcDbDictionaryWithDefault");
        Class("ACDBPLACEHOLDER", "AcDbPlaceHolder");
        Class("LAYOUT", "AcDbLayout");
        dxf.End();

        void Class(string name, string type) =>
            dxf.Put(0, "CLASS").Put(1, name).Put(2, type).Put(3, "ObjectDBX Classes").Put(90, 0).Put(280, 0).Put(281, 0);
    }

    /// <summary>Writes the section OBJECTS.</summary>
    public static void Write(DxfText dxf, DxfOwners owners, Point2 extent)
    {
        var (root, groups, layouts, plotStyles) = (dxf.NextHandle(), dxf.NextHandle(), dxf.NextHandle(), dxf.NextHandle());
        dxf.Begin("OBJECTS");
        Dictionary(dxf, root, "0", ("ACAD_GROUP", groups), ("ACAD_LAYOUT", layouts), ("ACAD_PLOTSTYLENAME", plotStyles));
        Dictionary(dxf, groups, root);
        Dictionary(dxf, layouts, root, ("Model", owners.ModelLayout), ("Layout1", owners.PaperLayout));
        dxf.Object("ACDBDICTIONARYWDFLT", plotStyles, root).Put(100, "AcDbDictionary").Put(281, 1)
            .Put(3, "Normal").Put(350, owners.PlotStyle).Put(100, "AcDbDictionaryWithDefault").Put(340, owners.PlotStyle);
        dxf.Object("ACDBPLACEHOLDER", owners.PlotStyle, plotStyles);
        Layout(dxf, "Model", 0, owners.ModelLayout, layouts, owners.ModelSpace, extent);
        Layout(dxf, "Layout1", 1, owners.PaperLayout, layouts, owners.PaperSpace, extent);
        dxf.End();
    }

    private static void Dictionary(DxfText dxf, string handle, string owner, params (string Key, string Handle)[] entries)
    {
        dxf.Object("DICTIONARY", handle, owner).Put(100, "AcDbDictionary").Put(281, 1);
        foreach (var (key, entry) in entries)
            dxf.Put(3, key).Put(350, entry);
    }

    private static void Layout(DxfText dxf, string name, int tab, string handle, string owner, string space, Point2 extent)
    {
        var origin = new Point2(0, 0);
        dxf.Object("LAYOUT", handle, owner).Put(100, "AcDbPlotSettings").Put(1, "").Put(2, "").Put(4, "").Put(6, "");
        foreach (var code in (int[])[40, 41, 42, 43])
            dxf.Put(code, 0.0);
        dxf.Put(44, extent.X).Put(45, extent.Y);
        foreach (var code in (int[])[46, 47, 48, 49, 140, 141])
            dxf.Put(code, 0.0);
        // Model layouts are flagged 1024; 5 plots the layout at 1:1, 16 is that scale's number.
        dxf.Put(142, 1.0).Put(143, 1.0).Put(70, tab == 0 ? 1024 : 0).Put(72, 1).Put(73, 0).Put(74, 5).Put(7, "").Put(75, 16).Put(147, 1.0)
            .Put(148, 0.0).Put(149, 0.0);
        dxf.Put(100, "AcDbLayout").Put(1, name).Put(70, 1).Put(71, tab).Point(10, origin).Point(11, extent).Point(12, origin, 0)
            .Point(14, origin, 0).Point(15, extent, 0).Put(146, 0.0).Point(13, origin, 0)
            .Point(16, new Point2(1, 0), 0).Point(17, new Point2(0, 1), 0).Put(76, 0).Put(330, space);
    }
}
