using System.Text;

namespace Lines.Drawing.Pdf;

/// <summary>The objects of a PDF, written in order of their numbers, and the table that finds them.</summary>
internal sealed class PdfBody
{
    private readonly Stream _file;
    private readonly List<long> _offsets = [];

    /// <summary>Starts a file.</summary>
    public PdfBody(Stream file)
    {
        _file = file;
        // Four bytes above 127 tell programs that move files that this one is binary.
        Put("%PDF-1.7\n%");
        _file.Write([0xE2, 0xE3, 0xCF, 0xD3, (byte)'\n']);
    }

    /// <summary>Writes one object; objects come in order, from 1.</summary>
    public void Object(int number, string value)
    {
        Begin(number);
        Put(value);
        Put("\nendobj\n");
    }

    /// <summary>Writes one stream, already deflated.</summary>
    public void Stream(int number, byte[] deflated)
    {
        Begin(number);
        Put(Invariant($"<< /Length {deflated.Length} /Filter /FlateDecode >>\nstream\n"));
        _file.Write(deflated);
        Put("\nendstream\nendobj\n");
    }

    /// <summary>Writes the table of objects and the trailer.</summary>
    public void End(int root, int info)
    {
        var table = _file.Position;
        Put(Invariant($"xref\n0 {_offsets.Count + 1}\n0000000000 65535 f \n"));
        foreach (var offset in _offsets)
            Put(Invariant($"{offset:D10} 00000 n \n"));
        Put(Invariant($"trailer\n<< /Size {_offsets.Count + 1} /Root {root} 0 R /Info {info} 0 R >>\nstartxref\n{table}\n%%EOF\n"));
    }

    private void Begin(int number)
    {
        if (number != _offsets.Count + 1)
            throw new InvalidOperationException(Invariant($"object {number} was written where {_offsets.Count + 1} is due"));
        _offsets.Add(_file.Position);
        Put(Invariant($"{number} 0 obj\n"));
    }

    private void Put(string text) => _file.Write(Encoding.ASCII.GetBytes(text));
}
