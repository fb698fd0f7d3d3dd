using System.Globalization;
using System.Text;
using Lines.Drawing.Text;
using Lines.Kernel.Geometry;

namespace Lines.Drawing.Dxf;

/// <summary>Group codes and values, one to a line, and the count of handles.</summary>
internal sealed class DxfText
{
    private const int Decimals = 8;

    private readonly StringBuilder _text = new();
    private int _handles;

    /// <summary>A handle not given out before.</summary>
    public string NextHandle() => (++_handles).ToString("X", CultureInfo.InvariantCulture);

    /// <summary>A text group.</summary>
    public DxfText Put(int code, string value)
    {
        Code(code).Append(value).Append('\n');
        return this;
    }

    /// <summary>An integer group.</summary>
    public DxfText Put(int code, int value)
    {
        Code(code).Append(CultureInfo.InvariantCulture, $"{value}\n");
        return this;
    }

    /// <summary>A real group.</summary>
    public DxfText Put(int code, double value)
    {
        Code(code).AppendPlain(value, Decimals).Append('\n');
        return this;
    }

    /// <summary>Two coordinates.</summary>
    public DxfText Point(int code, Point2 p) => Put(code, p.X).Put(code + 10, p.Y);

    /// <summary>Three coordinates.</summary>
    public DxfText Point(int code, Point2 p, double z) => Point(code, p).Put(code + 20, z);

    /// <summary>A variable of the header.</summary>
    public DxfText Variable(string name, int code, string value) => Put(9, "$" + name).Put(code, value);

    /// <summary>Starts a section.</summary>
    public void Begin(string section) => Put(0, "SECTION").Put(2, section);

    /// <summary>Ends a section.</summary>
    public void End() => Put(0, "ENDSEC");

    /// <summary>Starts an object with its handle and owner.</summary>
    public DxfText Object(string type, string handle, string owner) => Put(0, type).Put(5, handle).Put(330, owner);

    /// <summary>Starts an entity with its handle, owner and layer.</summary>
    public DxfText Entity(string type, string handle, string owner, string layer, string marker) =>
        Object(type, handle, owner).Put(100, "AcDbEntity").Put(8, layer).Put(100, marker);

    /// <summary>Appends another text.</summary>
    public DxfText Append(DxfText other)
    {
        _text.Append(other._text);
        return this;
    }

    /// <inheritdoc/>
    public override string ToString() => _text.ToString();

    private StringBuilder Code(int code) => _text.Append(CultureInfo.InvariantCulture, $"{code,3}\n");
}
