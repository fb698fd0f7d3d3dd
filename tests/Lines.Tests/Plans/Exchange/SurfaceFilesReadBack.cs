using System.Globalization;
using System.Text;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Plans.Exchange;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Exchange;

/// <summary>What OpenCASCADE, an independent reader, makes of STEP and IGES; tests/data/readers/surface-reader.cpp asks it.</summary>
public class SurfaceFilesReadBack
{
    [OutsideReaderTheory("occt")]
    [InlineData(".step")]
    [InlineData(".igs")]
    public void A_pointed_hull_is_one_valid_face_whose_points_are_those_of_the_surface(string ending)
    {
        var hull = SampleHulls.DoubleEnder();
        var read = Read(hull, ending);
        Assert.Contains("roots 1", read, StringComparer.Ordinal);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains("faces 1", read, StringComparer.Ordinal);
        Assert.Contains("edges 4 shared 0 degenerate 0", read, StringComparer.Ordinal);
        ComparePoles(hull, read);
        ComparePoints(hull, read);
    }

    // IGES surfaces stand alone; where the transom comes to a point at its foot, the reader makes an edge of no length.
    [OutsideReaderTheory("occt")]
    [InlineData(".step", "roots 1", "edges 6 shared 1 degenerate 0", "face 1 kind plane")]
    [InlineData(".igs", "roots 2", "edges 8 shared 0 degenerate 1", "face 1 kind bspline degrees 1 3 poles 2 8 rational 0")]
    public void A_transom_is_a_flat_face_along_the_edge_of_the_skin(string ending, string roots, string edges, string kind)
    {
        var hull = SampleHulls.TransomBoat();
        var read = Read(hull, ending);
        Assert.Contains(roots, read, StringComparer.Ordinal);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains("faces 2", read, StringComparer.Ordinal);
        Assert.Contains(edges, read, StringComparer.Ordinal);
        Assert.Contains(kind, read, StringComparer.Ordinal);
        ComparePoles(hull, read);
        ComparePoints(hull, read);

        // The transom's half area: by strips of its edge, second order, so 4000 of them.
        var half = FacetHydrostatics.Transom(hull.Side, 10, 4000).Area / 2;
        Assert.Equal(1e6 * half, Number(Line(read, "face 1 area")[3]), 1);
    }

    // The deck shares the sheer with the skin, and where there is one the transom's upper edge with that; in IGES surfaces stand alone.
    [OutsideReaderTheory("occt")]
    [InlineData(false, ".step", "roots 1", "faces 2", "shared 1")]
    [InlineData(true, ".step", "roots 1", "faces 3", "shared 3")]
    [InlineData(false, ".igs", "roots 2", "faces 2", "shared 0")]
    [InlineData(true, ".igs", "roots 4", "faces 4", "shared 0")]
    public void A_deck_is_a_face_of_its_own_that_closes_the_body(bool transom, string ending, string roots, string faces, string shared)
    {
        var hull = CrownedHulls.With(transom ? SampleHulls.TransomBoat() : SampleHulls.DoubleEnder(), 0.06);
        var whole = UprightHydrostatics.Enclosed(hull, 1e-10)!;
        var read = Read(hull, ending, below: 2);
        Assert.Contains(roots, read, StringComparer.Ordinal);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains(faces, read, StringComparer.Ordinal);
        Assert.Contains(read, l => l.StartsWith("edges ", StringComparison.Ordinal) && l.Contains(shared, StringComparison.Ordinal));
        ComparePoles(hull, read);
        ComparePoints(hull, read);
        Agree(whole.WettedSurface, 2e-6 * Number(Line(read, "below")[2]));
        Agree(whole.Volume, 2e-9 * Number(Line(read, "below")[4]));
    }

    // Lines' own figures and OpenCASCADE's, which cuts the file's faces at the design waterline and integrates what is left.
    [OutsideReaderTheory("occt")]
    [MemberData(nameof(TemplatesInBothFormats))]
    public void A_shaped_hull_has_the_size_areas_and_volume_that_Lines_tells(string template, string ending)
    {
        var hull = ShapedTemplates.Of(template).Hull;
        var afloat = UprightHydrostatics.Below(hull, hull.Draft, 1e-9);
        var read = Read(hull, ending, below: hull.Draft);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains(hull.Transom is null ? "faces 1" : "faces 2", read, StringComparer.Ordinal);
        Agree(hull.Dials.Length, 1e-3 * Number(Line(read, "extent")[1]));
        Agree(hull.Dials.Beam, 2e-3 * Number(Line(read, "extent")[2]));
        Agree(WholeSkin.Of(hull.Side).Area, 1e-6 * Number(Line(read, "face 0 area")[3]));
        Agree(afloat.WettedSurface, 2e-6 * Number(Line(read, "below")[2]));
        Agree(afloat.Volume, 2e-9 * Number(Line(read, "below")[4]));
    }

    [OutsideReaderTheory("occt")]
    [InlineData(".step")]
    [InlineData(".igs")]
    public void A_side_that_collapses_to_a_point_is_still_valid(string ending)
    {
        // A quarter of a pod: stem, keel and sheer meet in one point at the bow.
        var basis = SplineBasis.Clamped(2, [0, 1]);
        var net = new Point3[3, 3];
        for (var i = 0; i < 3; i++)
        {
            for (var j = 0; j < 3; j++)
                net[i, j] = new Point3(i, i * j * 0.1, 0.2 * i * (j - 1));
        }

        var hull = new HullSurface(new BSplineSurface(basis, basis, net), WigleyHull.Dials(2, 1, 0.4), 0.5, 0.5);
        var read = Read(hull, ending);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains("faces 1", read, StringComparer.Ordinal);
        Assert.Contains("edges 4 shared 0 degenerate 1", read, StringComparer.Ordinal);
        ComparePoles(hull, read);
    }

    public static TheoryData<string, string> TemplatesInBothFormats()
    {
        var rows = new TheoryData<string, string>();
        foreach (var name in ShapedTemplates.Names)
        {
            rows.Add(name, ".step");
            rows.Add(name, ".igs");
        }

        return rows;
    }

    private static void Agree(double lines, double outside) => Assert.Equal(1, outside / lines, 1e-6);

    private static void ComparePoles(HullSurface hull, List<string> read)
    {
        var side = hull.Side;
        Assert.Contains(Invariant($"face 0 kind bspline degrees {side.V.Degree} {side.U.Degree} poles {side.V.Count} {side.U.Count} rational 0"), read, StringComparer.Ordinal);
        var poles = read.Where(l => l.StartsWith("pole ", StringComparison.Ordinal)).Select(l => l.Split(' ')).Take(side.U.Count * side.V.Count).ToList();
        Assert.Equal(side.U.Count * side.V.Count, poles.Count);
        foreach (var words in poles)
        {
            var pole = side.PoleAt(int.Parse(words[2], CultureInfo.InvariantCulture), int.Parse(words[1], CultureInfo.InvariantCulture));
            Near(pole, words.AsSpan(3, 3));
        }
    }

    private static void ComparePoints(HullSurface hull, List<string> read)
    {
        var points = read.Where(l => l.StartsWith("point ", StringComparison.Ordinal)).Select(l => l.Split(' ')).ToList();
        Assert.Equal(Places.Count, points.Count);
        foreach (var ((u, v), words) in Places.Zip(points))
        {
            Near(hull.Side.PointAt(u, v), words.AsSpan(1, 3));
            var normal = new Vector3(Number(words[5]), Number(words[6]), Number(words[7]));
            Assert.Equal(1, normal.Unit().Dot(hull.NormalAt(u, v)), 1e-9);
        }
    }

    private static List<(double U, double V)> Places =>
        [.. from u in new[] { 0.03, 0.31, 0.5, 0.77, 0.99 } from v in new[] { 0.05, 0.4, 0.8, 1.0 } select (u, v)];

    private static List<string> Read(HullSurface hull, string ending, double? below = null)
    {
        var text = ending == ".step" ? StepFile.Write(hull, "Gauge Tender") : IgesFile.Write(hull, "Gauge Tender");
        using var file = ScratchFile.With(ending, Encoding.ASCII.GetBytes(text));
        // The file's first parameter is v: see StepFile and IgesFile.
        string[] cut = below is { } z ? ["below", Invariant($"{1000 * z:R}")] : [];
        var output = OutsideReader.Run("occt", [file.Path, .. cut, .. Places.SelectMany(p => new[] { "0", Invariant($"{p.V:R}"), Invariant($"{p.U:R}") })]);
        Assert.True(output.ExitCode == 0, output.Errors);
        return [.. output.Output.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
    }

    private static string[] Line(List<string> read, string start) => Assert.Single(read, l => l.StartsWith(start + " ", StringComparison.Ordinal)).Split(' ');

    // Millimeters: 1e-6 mm is a thousandth of the model length.
    private static void Near(Point3 p, ReadOnlySpan<string> millimeters)
    {
        Assert.Equal(1000 * p.X, Number(millimeters[0]), 1e-6);
        Assert.Equal(1000 * p.Y, Number(millimeters[1]), 1e-6);
        Assert.Equal(1000 * p.Z, Number(millimeters[2]), 1e-6);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
