using Lines.Plans.Paper;
using Xunit;

namespace Lines.Tests.Plans.Paper;

public class PaperSizeReferenceChecks
{
    private const double PointsPerMillimeter = 72 / 25.4;

    // RFC-interest archive: 11 in are 792 pt exactly; 8.5 in are 612.
    [Fact]
    public void Letter_is_612_by_792_points()
    {
        Assert.Equal(612, PaperSize.Letter.Width * PointsPerMillimeter, 9);
        Assert.Equal(792, PaperSize.Letter.Height * PointsPerMillimeter, 9);
    }

    // ISO 216: 210 by 297 mm.
    [Fact]
    public void A4_is_595_2756_by_841_8898_points()
    {
        Assert.Equal(595.275591, PaperSize.A4.Width * PointsPerMillimeter, 1e-6);
        Assert.Equal(841.889764, PaperSize.A4.Height * PointsPerMillimeter, 1e-6);
    }

    // ISO 216 as tabulated: A1 594x841, A2 420x594, A3 297x420, A4 210x297.
    [Fact]
    public void Each_A_size_is_the_larger_one_folded()
    {
        PaperSize[] sizes = [PaperSize.A1, PaperSize.A2, PaperSize.A3, PaperSize.A4];
        Assert.Equal([594, 420, 297, 210], sizes.Select(s => s.Width));
        for (var i = 1; i < sizes.Length; i++)
            Assert.Equal(sizes[i - 1].Width, sizes[i].Height);
    }
}
