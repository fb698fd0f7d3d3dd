using System.Buffers.Binary;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Text;

namespace Lines.Drawing.Canvas;

/// <summary>One point of a letter's outline [font units], y up; off the curve it is the handle of a parabola.</summary>
internal readonly record struct OutlinePoint(short X, short Y, bool OnCurve);

/// <summary>A letter of a font: how far it moves the pen and its closed outlines, filled where they wind round a place.</summary>
/// <param name="Advance">Way to the next letter [font units].</param>
/// <param name="Contours">Closed outlines; none for a blank.</param>
internal sealed record OutlineGlyph(int Advance, IReadOnlyList<IReadOnlyList<OutlinePoint>> Contours);

/// <summary>Writes a TrueType font: what a PDF needs to hold text as text.</summary>
/// <remarks>
/// <b>Method.</b> Ten tables, no instructions, no kerning; every letter may be embedded.
/// <b>Source.</b> ISO/IEC 14496-22, the OpenType font format, and its tables head, hhea, maxp, OS/2, hmtx, cmap (format 4), loca, glyf, name, post (from memory;
/// checked by poppler, qpdf and PdfPig).
/// </remarks>
internal static class TrueTypeFile
{
    private const uint WholeFileSum = 0xB1B0AFBA;

    private const int SumInHead = 8;

    /// <summary>The file's bytes.</summary>
    /// <param name="name">Name of the font, of letters, figures and hyphens.</param>
    /// <param name="unitsPerEm">Font units to its size, 16 to 16,384.</param>
    /// <param name="unknown">Drawn for characters the font lacks.</param>
    /// <param name="letters">Letters by character, of the basic plane.</param>
    public static byte[] Write(string name, int unitsPerEm, OutlineGlyph unknown, IReadOnlyDictionary<int, OutlineGlyph> letters)
    {
        int[] characters = [.. letters.Keys.Order()];
        OutlineGlyph[] glyphs = [unknown, .. characters.Select(c => letters[c])];
        List<OutlinePoint> points = [.. glyphs.SelectMany(g => g.Contours).SelectMany(c => c)];
        var box = new Box(points);
        Table outlines = new(), places = new();
        foreach (var glyph in glyphs)
        {
            places.Long(outlines.Count);
            Outline(outlines, glyph);
        }

        places.Long(outlines.Count);

        // In the order of their names, as readers expect.
        (string Tag, Table Table)[] tables =
        [
            ("OS/2", Os2(box, characters, glyphs)),
            ("cmap", Characters(characters)),
            ("glyf", outlines),
            ("head", Head(box, unitsPerEm)),
            ("hhea", new Table().Long(0x10000).Short(box.Top, box.Bottom, 0, glyphs.Max(g => g.Advance), box.Left, 0, box.Right, 1, 0, 0, 0, 0, 0, 0, 0, glyphs.Length)),
            ("hmtx", glyphs.Aggregate(new Table(), (t, g) => t.Short(g.Advance, new Box(g.Contours.SelectMany(c => c)).Left))),
            ("loca", places),
            ("maxp", new Table().Long(0x10000).Short(glyphs.Length, glyphs.Max(g => g.Contours.Sum(c => c.Count)), glyphs.Max(g => g.Contours.Count), 0, 0, 2, 0, 0, 0, 0, 0, 0, 0, 0)),
            ("name", Names(name)),
            ("post", new Table().Long(0x30000).Long(0).Short(box.Bottom / 2, unitsPerEm / 20).Long(0).Long(0).Long(0).Long(0).Long(0)),
        ];
        return Joined(tables);
    }

    private static byte[] Joined((string Tag, Table Table)[] tables)
    {
        var file = new Table().Long(0x10000).Short(tables.Length).Search(tables.Length, size: 16);
        var at = 12 + (16 * tables.Length);
        var head = 0;
        foreach (var (tag, table) in tables)
        {
            if (tag is "head")
                head = at;
            file.Raw(Encoding.ASCII.GetBytes(tag)).Long((int)table.Sum()).Long(at).Long(table.Count);
            at += table.Pad().Count;
        }

        foreach (var (_, table) in tables)
            file.Raw(table.Bytes);
        BinaryPrimitives.WriteUInt32BigEndian(file.Bytes[(head + SumInHead)..], WholeFileSum - file.Sum());
        return [.. file.Bytes];
    }

    private static void Outline(Table table, OutlineGlyph glyph)
    {
        if (glyph.Contours.Count == 0)
            return;
        List<OutlinePoint> points = [.. glyph.Contours.SelectMany(c => c)];
        var box = new Box(points);
        table.Short(glyph.Contours.Count, box.Left, box.Bottom, box.Right, box.Top);
        var last = -1;
        foreach (var contour in glyph.Contours)
            table.Short(last += contour.Count);
        table.Short(0).Raw([.. points.Select(p => (byte)(p.OnCurve ? 1 : 0))]);
        for (var i = 0; i < points.Count; i++)
            table.Short(points[i].X - (i == 0 ? 0 : points[i - 1].X));
        for (var i = 0; i < points.Count; i++)
            table.Short(points[i].Y - (i == 0 ? 0 : points[i - 1].Y));
        table.Pad();
    }

    private static Table Head(Box box, int unitsPerEm) => new Table()
        .Long(0x10000).Long(0x10000).Long(0).Long(0x5F0F3CF5).Short(0, unitsPerEm).Long(0).Long(0).Long(0).Long(0)
        .Short(box.Left, box.Bottom, box.Right, box.Top, 0, 8, 2, 1, 0);

    private static Table Os2(Box box, int[] characters, OutlineGlyph[] glyphs) => new Table()
        .Short(4, (int)glyphs.Average(g => g.Advance), 400, 5, 0)
        .Short(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0)
        .Raw(new byte[10]).Long(0).Long(0).Long(0).Long(0).Raw("    "u8.ToArray())
        .Short(0x40, characters[0], characters[^1], box.Top, box.Bottom, 0, box.Top, -box.Bottom).Long(0).Long(0)
        .Short(box.Top, box.Top, 0, ' ', 0);

    /// <summary>Format 4: a segment for every run of characters, the glyphs of which follow each other; the last one ends the list.</summary>
    private static Table Characters(int[] characters)
    {
        var segments = new List<(int First, int Last, int Delta)>();
        for (var i = 0; i < characters.Length; i++)
        {
            if (segments.Count > 0 && segments[^1].Last == characters[i] - 1)
                segments[^1] = segments[^1] with { Last = characters[i] };
            else
                segments.Add((characters[i], characters[i], i + 1 - characters[i]));
        }

        segments.Add((0xFFFF, 0xFFFF, 1));
        return new Table().Short(0, 1, 3, 1).Long(12)
            .Short(4, 16 + (8 * segments.Count), 0, 2 * segments.Count).Search(segments.Count, size: 2)
            .Short([.. segments.Select(s => s.Last)]).Short(0).Short([.. segments.Select(s => s.First)])
            .Short([.. segments.Select(s => s.Delta)]).Short(new int[segments.Count]);
    }

    private static Table Names(string name)
    {
        (int Id, string Text)[] names = [(1, name), (2, "Regular"), (3, name), (4, name), (5, "Version 1.0"), (6, name)];
        var table = new Table().Short(0, names.Length, 6 + (12 * names.Length));
        var at = 0;
        foreach (var (id, text) in names)
        {
            table.Short(3, 1, 0x409, id, 2 * text.Length, at);
            at += 2 * text.Length;
        }

        return names.Aggregate(table, (t, n) => t.Raw(Encoding.BigEndianUnicode.GetBytes(n.Text)));
    }

    private readonly record struct Box(int Left, int Bottom, int Right, int Top)
    {
        public Box(IEnumerable<OutlinePoint> points)
            : this(0, 0, 0, 0)
        {
            List<OutlinePoint> all = [.. points];
            if (all.Count > 0)
                this = new Box(all.Min(p => p.X), all.Min(p => p.Y), all.Max(p => p.X), all.Max(p => p.Y));
        }
    }

    /// <summary>Bytes of a table, greatest first in every number.</summary>
    private sealed class Table
    {
        private readonly List<byte> _bytes = [];

        public int Count => _bytes.Count;

        public Table Short(params ReadOnlySpan<int> values)
        {
            foreach (var value in values)
            {
                _bytes.Add((byte)(value >> 8));
                _bytes.Add((byte)value);
            }

            return this;
        }

        /// <summary>What a search by halves begins with: the greatest power of two within a number of entries, its logarithm and the rest.</summary>
        public Table Search(int count, int size)
        {
            var log = BitOperations.Log2((uint)count);
            return Short(size << log, log, size * (count - (1 << log)));
        }

        public Table Long(int value) => Short(value >> 16, value);

        public Table Raw(ReadOnlySpan<byte> bytes)
        {
            _bytes.AddRange(bytes);
            return this;
        }

        public Span<byte> Bytes => CollectionsMarshal.AsSpan(_bytes);

        /// <summary>Ends it on a whole word.</summary>
        public Table Pad()
        {
            while (_bytes.Count % 4 != 0)
                _bytes.Add(0);
            return this;
        }

        /// <summary>The sum of its words, as the directory states it.</summary>
        public uint Sum()
        {
            var sum = 0u;
            for (var i = 0; i < _bytes.Count; i++)
                sum += (uint)_bytes[i] << (24 - (8 * (i % 4)));
            return sum;
        }
    }
}
