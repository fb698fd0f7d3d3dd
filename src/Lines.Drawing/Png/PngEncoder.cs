using System.Buffers.Binary;
using System.IO.Compression;
using System.Text;

namespace Lines.Drawing.Png;

/// <summary>Writes a picture of greys as a PNG file.</summary>
/// <remarks><b>Source.</b> W3C, Portable Network Graphics (PNG) Specification: chunks, filters, checksum.</remarks>
internal static class PngEncoder
{
    private static readonly uint[] CrcTable = MakeCrcTable();

    /// <summary>The file's bytes: 8-bit greys, resolution stated.</summary>
    public static byte[] Encode(Raster raster, double pixelsPerMeter)
    {
        using var file = new MemoryStream();
        file.Write([0x89, (byte)'P', (byte)'N', (byte)'G', (byte)'\r', (byte)'\n', 0x1A, (byte)'\n']);
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, raster.Width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), raster.Height);
        // Eight bits of grey, deflated, filtered by row, not interlaced.
        head[8] = 8;
        Chunk(file, "IHDR", head);
        var resolution = new byte[9];
        BinaryPrimitives.WriteInt32BigEndian(resolution, (int)Math.Round(pixelsPerMeter));
        BinaryPrimitives.WriteInt32BigEndian(resolution.AsSpan(4), (int)Math.Round(pixelsPerMeter));
        resolution[8] = 1;
        Chunk(file, "pHYs", resolution);
        Chunk(file, "IDAT", Deflate(raster));
        Chunk(file, "IEND", []);
        return file.ToArray();
    }

    private static ReadOnlySpan<byte> Deflate(Raster raster)
    {
        var packed = new MemoryStream();
        using (var deflate = new ZLibStream(packed, CompressionLevel.Optimal, leaveOpen: true))
        {
            for (var row = 0; row < raster.Height; row++)
            {
                // Filter 0: line drawings deflate best as they are.
                deflate.WriteByte(0);
                deflate.Write(raster.Pixels, row * raster.Width, raster.Width);
            }
        }

        return packed.GetBuffer().AsSpan(0, (int)packed.Length);
    }

    private static void Chunk(Stream file, string type, ReadOnlySpan<byte> data)
    {
        Span<byte> word = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(word, data.Length);
        file.Write(word);
        var name = Encoding.ASCII.GetBytes(type);
        file.Write(name);
        file.Write(data);
        BinaryPrimitives.WriteUInt32BigEndian(word, ~Crc(data, Crc(name, 0xFFFFFFFF)));
        file.Write(word);
    }

    private static uint Crc(ReadOnlySpan<byte> data, uint crc)
    {
        foreach (var b in data)
            crc = CrcTable[(crc ^ b) & 0xFF] ^ (crc >> 8);
        return crc;
    }

    private static uint[] MakeCrcTable()
    {
        var table = new uint[256];
        for (var n = 0u; n < 256; n++)
        {
            var c = n;
            for (var k = 0; k < 8; k++)
                c = (c & 1) != 0 ? 0xEDB88320 ^ (c >> 1) : c >> 1;
            table[n] = c;
        }

        return table;
    }
}
