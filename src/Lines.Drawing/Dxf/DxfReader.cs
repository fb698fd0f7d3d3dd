using System.Globalization;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>Reads the groups of a DXF text of any version, and of its entities those a router follows.</summary>
/// <remarks>Text files only; what stands in blocks is not drawn out. Source of the group codes: the published reference of the format (from memory).</remarks>
internal sealed class DxfReader
{
    private readonly List<Item> _items = [];

    private DxfReader(string text)
    {
        var lines = text.Split('\n');
        var count = lines.Length;
        while (count > 0 && lines[count - 1].AsSpan().Trim().IsEmpty)
            count--;
        for (var i = 0; i < count; i += 2)
        {
            if (!int.TryParse(lines[i], NumberStyles.Integer, CultureInfo.InvariantCulture, out var code))
                throw new DxfFormatException(i + 1, Invariant($"\"{Shown(lines[i])}\" stands where the number of a group should"));
            if (i + 1 >= count)
                throw new DxfFormatException(i + 1, Invariant($"the file breaks off behind group {code}"));
            var value = lines[i + 1].TrimEnd('\r');
            if (code == 0 || _items.Count == 0)
                _items.Add(new Item(code == 0 ? value.Trim() : "", i + 1, []));
            if (code != 0)
                _items[^1].Groups.Add((code, value.Trim(), i + 2));
        }

        if (_items.Count == 0 || _items[^1].Type is not "EOF")
            throw new DxfFormatException(Math.Max(1, count), "the file does not end with EOF: it is no DXF, or breaks off");
    }

    public static DxfDrawing Read(string text)
    {
        var reader = new DxfReader(text);
        var (paths, others) = reader.Entities();
        return new DxfDrawing(reader.Variable("$ACADVER") ?? "", reader.Unit(), [.. reader.Section("TABLES").Where(i => i.Type is "LAYER").Select(i => i.Text(2))], paths, others);
    }

    private (List<DxfPath> Paths, List<(string Type, int Line)> Others) Entities()
    {
        var paths = new List<DxfPath>();
        var others = new List<(string, int)>();
        Item? open = null;
        var vertices = new List<ArcVertex>();
        foreach (var item in Section("ENTITIES"))
        {
            switch (item.Type)
            {
                case "POLYLINE":
                    (open, vertices) = (item, []);
                    break;
                case "VERTEX" when open is not null:
                    vertices.Add(new ArcVertex(item.Point(10), item.Number(42, 0)));
                    break;
                case "SEQEND" when open is not null:
                    paths.Add(new DxfPath(open.Text(8), "POLYLINE", new ArcPath(vertices, open.IsClosed), open.Line));
                    open = null;
                    break;
                case "LINE" or "LWPOLYLINE" or "ARC" or "CIRCLE":
                    paths.Add(new DxfPath(item.Text(8), item.Type, PathOf(item), item.Line));
                    break;
                default:
                    others.Add((item.Type, item.Line));
                    break;
            }
        }

        if (open is not null)
            throw new DxfFormatException(open.Line, "a POLYLINE is not ended by SEQEND");
        return (paths, others);
    }

    private static ArcPath PathOf(Item item)
    {
        switch (item.Type)
        {
            case "LINE":
                return ArcPath.Line(item.Point(10), item.Point(11));
            case "CIRCLE":
                return ArcPath.Circle(item.Point(10), item.Number(40));
            case "ARC":
                // Angles in degrees, counter-clockwise from the first to the second.
                double radius = item.Number(40), from = item.Number(50) * Math.PI / 180, turn = (item.Number(51) - item.Number(50)) * Math.PI / 180;
                if (turn <= 0)
                    turn += 2 * Math.PI;
                var center = item.Point(10);
                return new ArcPath([new ArcVertex(OnCircle(from), Math.Tan(turn / 4)), new ArcVertex(OnCircle(from + turn), 0)], false);

                Point2 OnCircle(double angle) => center + (radius * new Vector2(Math.Cos(angle), Math.Sin(angle)));
            default:
                return Polyline(item);
        }
    }

    private static ArcPath Polyline(Item item)
    {
        var vertices = new List<ArcVertex>();
        foreach (var (code, value, line) in item.Groups)
        {
            if (code == 10)
                vertices.Add(new ArcVertex(new Point2(NumberOf(value, line), 0), 0));
            else if (code == 20 && vertices.Count > 0)
                vertices[^1] = vertices[^1] with { Point = vertices[^1].Point with { Y = NumberOf(value, line) } };
            else if (code == 42 && vertices.Count > 0)
                vertices[^1] = vertices[^1] with { Bulge = NumberOf(value, line) };
        }

        return new ArcPath(vertices, item.IsClosed);
    }

    // The header's variable; in release 12, which has none, our comment at the head of the file.
    private DxfUnit Unit()
    {
        var comments = _items[0].Groups.Where(g => g.Code == 999).Select(g => g.Value).ToList();
        return Variable("$INSUNITS") switch
        {
            "1" => DxfUnit.Inch,
            "4" => DxfUnit.Millimeter,
            _ => new[] { DxfUnit.Millimeter, DxfUnit.Inch }.FirstOrDefault(u => comments.Contains(DxfUnits.Comment(u), StringComparer.Ordinal), DxfUnit.None),
        };
    }

    private string? Variable(string name)
    {
        foreach (var item in Section("HEADER", withHead: true))
        {
            var at = item.Groups.FindIndex(g => g.Code == 9 && g.Value.Equals(name, StringComparison.Ordinal));
            if (at >= 0 && at + 1 < item.Groups.Count)
                return item.Groups[at + 1].Value;
        }

        return null;
    }

    private IEnumerable<Item> Section(string name, bool withHead = false)
    {
        var first = _items.FindIndex(i => i.Type is "SECTION" && i.Text(2).Equals(name, StringComparison.Ordinal));
        return first < 0 ? [] : _items.Skip(withHead ? first : first + 1).TakeWhile(i => i.Type is not "ENDSEC");
    }

    private static double NumberOf(string value, int line) =>
        double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw new DxfFormatException(line, Invariant($"\"{Shown(value)}\" is no number"));

    private static string Shown(string text)
    {
        const int most = 30;
        var sound = new string([.. text.Trim().Select(c => char.IsControl(c) ? '?' : c)]);
        return sound.Length <= most ? sound : sound[..most] + "...";
    }

    // What begins at a group 0; comments before the first have an item of their own.
    private sealed record Item(string Type, int Line, List<(int Code, string Value, int Line)> Groups)
    {
        public bool IsClosed => (int)Number(70, 0) % 2 == 1;

        public string Text(int code) => Groups.Where(g => g.Code == code).Select(g => g.Value).FirstOrDefault("");

        public Point2 Point(int code) => new(Number(code), Number(code + 10));

        public double Number(int code, double? otherwise = null)
        {
            foreach (var (c, value, line) in Groups)
            {
                if (c == code)
                    return NumberOf(value, line);
            }

            return otherwise ?? throw new DxfFormatException(Line, Invariant($"{Type} lacks group {code}"));
        }
    }
}
