using System.Globalization;

namespace Lines.Tests.Support.Dxf;

/// <summary>A strict reading of AC1015 files, for what general readers mend in silence.</summary>
/// <remarks>
/// Source: Autodesk's published DXF reference for the version (group codes, subclass markers, tables, objects); from
/// memory. That it finds faults is proved by seeding them (DxfCheckerTests).
/// </remarks>
internal static class DxfChecker
{
    private static readonly string[] Sections = ["HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"];

    private static readonly Dictionary<string, string> Tables = new(StringComparer.Ordinal)
    {
        ["VPORT"] = "AcDbViewportTableRecord",
        ["LTYPE"] = "AcDbLinetypeTableRecord",
        ["LAYER"] = "AcDbLayerTableRecord",
        ["STYLE"] = "AcDbTextStyleTableRecord",
        ["VIEW"] = "AcDbViewTableRecord",
        ["UCS"] = "AcDbUCSTableRecord",
        ["APPID"] = "AcDbRegAppTableRecord",
        ["DIMSTYLE"] = "AcDbDimStyleTableRecord",
        ["BLOCK_RECORD"] = "AcDbBlockTableRecord",
    };

    private static readonly int[] LineWeights = [-3, -2, -1, 0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211];

    /// <summary>Every fault of a file, in words; none when it is sound.</summary>
    public static IReadOnlyList<string> Faults(string text)
    {
        DxfGroups dxf;
        try
        {
            dxf = DxfGroups.Read(text);
        }
        catch (FormatException fault)
        {
            return [fault.Message];
        }

        return [.. Frame(dxf, text), .. Values(dxf), .. Header(dxf), .. TableFaults(dxf), .. Handles(dxf), .. Layers(dxf), .. Blocks(dxf), .. Entities(dxf), .. Objects(dxf)];
    }

    private static IEnumerable<string> Frame(DxfGroups dxf, string text)
    {
        if (text.Any(c => c > 126 || (c < 32 && c != '\n')))
            yield return "a sign outside ASCII";
        if (dxf.Items[^1].Type is not "EOF" || dxf.Items.Count(i => i.Type is "EOF") != 1)
            yield return "the file does not end on one EOF";
        var found = dxf.Items.Where(i => i.Type is "SECTION").Select(i => i.Text(2) ?? "").ToList();
        if (!found.SequenceEqual(Sections, StringComparer.Ordinal))
            yield return $"sections {string.Join(' ', found)}";
        if (dxf.Items.Count(i => i.Type is "ENDSEC") != Sections.Length)
            yield return "a section without end";
    }

    private static IEnumerable<string> Values(DxfGroups dxf)
    {
        foreach (var (item, group) in dxf.Items.SelectMany(i => i.Groups.Select(g => (i, g))))
        {
            var sound = group.Code switch
            {
                (>= 10 and <= 59) or (>= 140 and <= 149) => double.TryParse(group.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var x) && double.IsFinite(x),
                (>= 60 and <= 99) or (>= 170 and <= 175) or (>= 270 and <= 289) or (>= 370 and <= 379) => int.TryParse(group.Value, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out _),
                290 => group.Value is "0" or "1",
                5 or 105 or (>= 320 and <= 369) or (>= 390 and <= 399) => long.TryParse(group.Value, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out _),
                _ => true,
            };
            if (!sound)
                yield return $"{item.Type}: group {N(group.Code)} has the value \"{group.Value}\"";
        }
    }

    private static IEnumerable<string> Header(DxfGroups dxf)
    {
        if (dxf.Variable("$ACADVER") is not "AC1015")
            yield return $"$ACADVER is {dxf.Variable("$ACADVER")}";
        if (dxf.Variable("$INSUNITS") is not ("1" or "4"))
            yield return $"$INSUNITS is {dxf.Variable("$INSUNITS")}";
        var seed = Hex(dxf.Variable("$HANDSEED"));
        if (dxf.Items.Any(i => i.Type is not "SECTION" && Hex(i.Handle) >= seed))
            yield return "$HANDSEED is no higher than every handle";
    }

    private static IEnumerable<string> TableFaults(DxfGroups dxf)
    {
        foreach (var (name, marker) in Tables)
        {
            var table = dxf.Table(name);
            if (table.Count == 0)
            {
                yield return $"table {name} is missing";
                continue;
            }

            var head = table[0];
            if (head.Text(330) is not "0" || !head.Markers.StartsWith("AcDbSymbolTable", StringComparison.Ordinal))
                yield return $"table {name}: owner or subclass marker";
            if (!string.Equals(head.Text(70), N(table.Count - 1), StringComparison.Ordinal))
                yield return $"table {name} counts {head.Text(70)} records and has {N(table.Count - 1)}";
            foreach (var record in table.Skip(1))
            {
                if (!string.Equals(record.Type, name, StringComparison.Ordinal) || !string.Equals(record.Text(330), head.Handle, StringComparison.Ordinal))
                    yield return $"table {name}: a {record.Type} owned by {record.Text(330)}";
                if (!string.Equals(record.Markers, "AcDbSymbolTableRecord " + marker, StringComparison.Ordinal))
                    yield return $"table {name}: subclass markers {record.Markers}";
            }
        }

        foreach (var (table, name) in new[] { ("LTYPE", "ByLayer"), ("LTYPE", "ByBlock"), ("LTYPE", "Continuous"), ("LAYER", "0"), ("APPID", "ACAD"), ("STYLE", "Standard") })
        {
            if (!Names(dxf, table).Contains(name, StringComparer.Ordinal))
                yield return $"table {table} lacks {name}";
        }
    }

    private static IEnumerable<string> Handles(DxfGroups dxf)
    {
        var known = new HashSet<string>(StringComparer.Ordinal);
        foreach (var item in dxf.Items.Where(i => i.Type is not ("SECTION" or "ENDSEC" or "ENDTAB" or "EOF" or "CLASS")))
        {
            if (Hex(item.Handle) <= 0)
                yield return $"{item.Type} has no handle";
            else if (!known.Add(item.Handle!))
                yield return $"handle {item.Handle} is there twice";
        }

        foreach (var (item, pointer) in dxf.Items.SelectMany(i => i.Groups.Where(g => g.Code is 330 or 340 or 350 or 360 or 390).Select(g => (i, g))))
        {
            if (pointer.Value is not "0" && !known.Contains(pointer.Value))
                yield return $"{item.Type} points to {pointer.Value}, which is not there";
        }
    }

    private static IEnumerable<string> Layers(DxfGroups dxf)
    {
        var lineTypes = Names(dxf, "LTYPE").ToList();
        foreach (var layer in dxf.Table("LAYER").Skip(1))
        {
            if (!lineTypes.Contains(layer.Text(6) ?? "", StringComparer.Ordinal))
                yield return $"layer {layer.Text(2)} has the line type {layer.Text(6)}, which is not defined";
            if (!(int.TryParse(layer.Text(62), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var color) && color is >= 1 and <= 255))
                yield return $"layer {layer.Text(2)} has the color {layer.Text(62)}";
            if (!(int.TryParse(layer.Text(370), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var weight) && LineWeights.Contains(weight)))
                yield return $"layer {layer.Text(2)} has the line weight {layer.Text(370)}";
        }

        foreach (var type in dxf.Table("LTYPE").Skip(1))
        {
            var lengths = type.Groups.Where(g => g.Code == 49).Select(g => g.Real).ToList();
            if (!string.Equals(type.Text(73), N(lengths.Count), StringComparison.Ordinal) || type.All(74).Count() != lengths.Count)
                yield return $"line type {type.Text(2)} counts {type.Text(73)} lengths and has {N(lengths.Count)}";
            if (Math.Abs(type.Groups.First(g => g.Code == 40).Real - lengths.Sum(Math.Abs)) > 1e-6)
                yield return $"line type {type.Text(2)} has another length than its parts";
        }

        foreach (var name in new[] { "LAYER", "LTYPE", "BLOCK_RECORD" })
        {
            if (Names(dxf, name).Distinct(StringComparer.OrdinalIgnoreCase).Count() != dxf.Table(name).Count - 1)
                yield return $"table {name} has one name twice";
        }
    }

    private static IEnumerable<string> Blocks(DxfGroups dxf)
    {
        var records = dxf.Table("BLOCK_RECORD").Skip(1).ToList();
        var items = dxf.Section("BLOCKS").Skip(1).ToList();
        if (!records.Select(r => r.Text(2)).SequenceEqual(["*Model_Space", "*Paper_Space"], StringComparer.Ordinal) || items.Count != 4)
            yield return "the blocks are not those of the two spaces";
        for (var i = 0; i + 1 < items.Count && i / 2 < records.Count; i += 2)
        {
            var (block, end, record) = (items[i], items[i + 1], records[i / 2]);
            if (!(block is { Type: "BLOCK", Markers: "AcDbEntity AcDbBlockBegin" } && end is { Type: "ENDBLK", Markers: "AcDbEntity AcDbBlockEnd" }))
                yield return $"block {block.Text(2)}: type or subclass markers";
            if (!string.Equals(block.Text(2), record.Text(2), StringComparison.Ordinal) || block.Text(330) != record.Handle || end.Text(330) != record.Handle)
                yield return $"block {block.Text(2)} is not owned by its record";
        }
    }

    private static IEnumerable<string> Entities(DxfGroups dxf)
    {
        var layers = Names(dxf, "LAYER").ToList();
        var space = dxf.Table("BLOCK_RECORD").Skip(1).FirstOrDefault()?.Handle;
        foreach (var entity in dxf.Section("ENTITIES").Skip(1))
        {
            var at = $"{entity.Type} {entity.Handle}";
            var marker = entity.Type switch { "LINE" => "AcDbEntity AcDbLine", "LWPOLYLINE" => "AcDbEntity AcDbPolyline", "CIRCLE" => "AcDbEntity AcDbCircle", _ => null };
            if (marker is null || !string.Equals(entity.Markers, marker, StringComparison.Ordinal))
                yield return $"{at}: type or subclass markers \"{entity.Markers}\"";
            if (!layers.Contains(entity.Text(8) ?? "", StringComparer.Ordinal))
                yield return $"{at} is on the layer {entity.Text(8)}, which is not defined";
            if (!string.Equals(entity.Text(330), space, StringComparison.Ordinal))
                yield return $"{at} is not owned by the model space";
            foreach (var fault in entity.Type switch { "LINE" => Line(entity), "CIRCLE" => Circle(entity), _ => Polyline(entity) })
                yield return $"{at}: {fault}";
        }
    }

    private static IEnumerable<string> Line(DxfItem line)
    {
        if (!line.Groups.Where(g => g.Code is >= 10 and <= 39).Select(g => g.Code).SequenceEqual([10, 20, 30, 11, 21, 31]))
            yield return "coordinates";
        else if (line.Text(10) == line.Text(11) && line.Text(20) == line.Text(21))
            yield return "no length";
    }

    private static IEnumerable<string> Circle(DxfItem circle)
    {
        if (!circle.Groups.Where(g => g.Code is >= 10 and <= 49).Select(g => g.Code).SequenceEqual([10, 20, 30, 40]))
            yield return "center and radius";
        else if (!(double.Parse(circle.Text(40)!, CultureInfo.InvariantCulture) > 0))
            yield return "no radius";
    }

    private static IEnumerable<string> Polyline(DxfItem polyline)
    {
        var (x, y) = (polyline.All(10).ToList(), polyline.All(20).ToList());
        if (x.Count < 2 || x.Count != y.Count || !string.Equals(polyline.Text(90), N(x.Count), StringComparison.Ordinal))
            yield return $"counts {polyline.Text(90)} vertices and has {N(x.Count)}";
        if (polyline.Text(70) is not ("0" or "1"))
            yield return $"flag 70 is {polyline.Text(70)}";
        var closed = polyline.Text(70) is "1";
        for (var i = closed ? 0 : 1; i < Math.Min(x.Count, y.Count); i++)
        {
            var before = (i + x.Count - 1) % x.Count;
            if (string.Equals(x[i], x[before], StringComparison.Ordinal) && string.Equals(y[i], y[before], StringComparison.Ordinal))
                yield return $"vertex {N(i)} repeats the one before it";
        }
    }

    private static IEnumerable<string> Objects(DxfGroups dxf)
    {
        var objects = dxf.Section("OBJECTS").Skip(1).ToList();
        var byHandle = objects.Where(o => o.Handle is not null).DistinctBy(o => o.Handle, StringComparer.Ordinal).ToDictionary(o => o.Handle!, StringComparer.Ordinal);
        if (objects.Count == 0 || objects[0] is not { Type: "DICTIONARY", Markers: "AcDbDictionary" } || objects[0].Text(330) is not "0")
        {
            yield return "the objects do not start with the root dictionary";
            yield break;
        }

        foreach (var name in new[] { "ACAD_GROUP", "ACAD_LAYOUT" })
        {
            if (!objects[0].All(3).Contains(name, StringComparer.Ordinal))
                yield return $"the root dictionary lacks {name}";
        }

        foreach (var (dictionary, entry) in objects.SelectMany(o => o.All(350).Select(e => (o, e))))
        {
            if (byHandle.TryGetValue(entry, out var target) && target.Text(330) != dictionary.Handle)
                yield return $"{target.Type} {entry} is not owned by the dictionary that lists it";
        }

        foreach (var record in dxf.Table("BLOCK_RECORD").Skip(1))
        {
            var layout = byHandle.GetValueOrDefault(record.Text(340) ?? "");
            if (layout is not { Type: "LAYOUT", Markers: "AcDbPlotSettings AcDbLayout" } || layout.All(330).Last() != record.Handle)
                yield return $"{record.Text(2)} has no layout that points back";
        }
    }

    private static IEnumerable<string> Names(DxfGroups dxf, string table) => dxf.Table(table).Skip(1).Select(r => r.Text(2) ?? "");

    private static long Hex(string? handle) => long.TryParse(handle, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var n) ? n : 0;

    private static string N(int number) => number.ToString(CultureInfo.InvariantCulture);
}
