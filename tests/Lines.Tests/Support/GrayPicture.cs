using System.Globalization;
using System.Text;

namespace Lines.Tests.Support;

/// <summary>A gray picture read from the PGM format (binary, eight bits).</summary>
internal sealed class GrayPicture
{
    private readonly byte[] _pixels;

    private GrayPicture(int width, int height, byte[] pixels) => (Width, Height, _pixels) = (width, height, pixels);

    public int Width { get; }

    public int Height { get; }

    /// <summary>Black in the picture: the sum of what each pixel lacks from white, in pixels.</summary>
    public double Ink => _pixels.Sum(p => (255 - p) / 255.0);

    /// <summary>How dark a pixel is, 0 white to 1 black; outside the picture is white.</summary>
    public double At(int x, int y) => x >= 0 && y >= 0 && x < Width && y < Height ? (255 - _pixels[(y * Width) + x]) / 255.0 : 0;

    /// <summary>Black inside a rectangle of pixels.</summary>
    public double InkIn(int left, int top, int right, int bottom)
    {
        var sum = 0.0;
        for (var y = top; y < bottom; y++)
        {
            for (var x = left; x < right; x++)
                sum += At(x, y);
        }

        return sum;
    }

    /// <summary>Renders one page of a PDF with poppler.</summary>
    public static GrayPicture OfPdf(byte[] pdf, int page, int width, int height)
    {
        using var file = ScratchFile.With(".pdf", pdf);
        using var picture = new ScratchFile(".pgm");
        var number = page.ToString(CultureInfo.InvariantCulture);
        var run = OutsideReader.Run("pdftoppm", "-gray", "-singlefile", "-f", number, "-l", number,
            "-scale-to-x", width.ToString(CultureInfo.InvariantCulture), "-scale-to-y", height.ToString(CultureInfo.InvariantCulture),
            file.Path, Path.ChangeExtension(picture.Path, null));
        return run.ExitCode == 0 ? Read(File.ReadAllBytes(picture.Path)) : throw new InvalidOperationException(run.Errors);
    }

    /// <summary>Decodes a PNG with ImageMagick.</summary>
    public static GrayPicture OfPng(byte[] png)
    {
        using var file = ScratchFile.With(".png", png);
        using var picture = new ScratchFile(".pgm");
        var run = OutsideReader.Run("convert", file.Path, "-depth", "8", picture.Path);
        return run.ExitCode == 0 ? Read(File.ReadAllBytes(picture.Path)) : throw new InvalidOperationException(run.Errors);
    }

    private static GrayPicture Read(byte[] file)
    {
        var fields = new List<string>();
        var at = 0;
        while (fields.Count < 4)
        {
            var word = new StringBuilder();
            while (!char.IsWhiteSpace((char)file[at]))
                word.Append((char)file[at++]);
            at++;
            fields.Add(word.ToString());
        }

        if (fields[0] != "P5" || fields[3] != "255")
            throw new FormatException("not an 8-bit PGM: " + string.Join(' ', fields));
        var (width, height) = (int.Parse(fields[1], CultureInfo.InvariantCulture), int.Parse(fields[2], CultureInfo.InvariantCulture));
        return new GrayPicture(width, height, file[at..(at + (width * height))]);
    }
}
