using System.Globalization;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using Lines.Plans.Exchange;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Exchange;

/// <summary>What OpenCASCADE, an independent reader, makes of the file; tests/data/readers/step-reader.cpp asks it.</summary>
public class StepFileReadBack
{
    private const string Title = "Gauge Tender";

    [OutsideReaderFact("occt")]
    public void A_pointed_hull_is_one_valid_face_whose_points_are_those_of_the_surface()
    {
        var hull = SampleHulls.DoubleEnder();
        var read = Read(hull);
        Assert.Contains("roots 1", read, StringComparer.Ordinal);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains("faces 1", read, StringComparer.Ordinal);
        Assert.Contains("edges 4 shared 0 degenerate 0", read, StringComparer.Ordinal);
        ComparePoles(hull, read);
        ComparePoints(hull, read);
        CompareArea(hull, read);
    }

    [OutsideReaderFact("occt")]
    public void A_transom_is_a_flat_face_that_shares_the_edge_of_the_skin()
    {
        var hull = SampleHulls.TransomBoat();
        var read = Read(hull);
        Assert.Contains("roots 1", read, StringComparer.Ordinal);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains("faces 2", read, StringComparer.Ordinal);
        Assert.Contains("edges 6 shared 1 degenerate 0", read, StringComparer.Ordinal);
        Assert.Contains("face 1 kind plane", read, StringComparer.Ordinal);
        ComparePoles(hull, read);
        ComparePoints(hull, read);
        CompareArea(hull, read);

        // The transom's half area: by strips of its edge, second order, so 4000 of them.
        var half = FacetHydrostatics.Transom(hull.Side, 10, 4000).Area / 2;
        Assert.Equal(1e6 * half, Number(Line(read, "face 1 area").Split(' ')[3]), 1);
    }

    [OutsideReaderTheory("occt")]
    [InlineData("gauge-runner", 1)]
    [InlineData("silt-sampler", 2)]
    public void A_shaped_hull_is_valid_and_has_its_area(string template, int faces)
    {
        var path = Repository.PathOf("templates", template + ".toml");
        var hull = HullShape.Solve(DesignFile.Read(File.ReadAllText(path), path).Design!.Vessel.MainHull).Surface!;
        var read = Read(hull);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains(Invariant($"faces {faces}"), read, StringComparer.Ordinal);
        ComparePoles(hull, read);
        CompareArea(hull, read);
    }

    [OutsideReaderFact("occt")]
    public void A_side_that_collapses_to_a_point_is_left_out_and_still_valid()
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
        var read = Read(hull);
        Assert.Contains("valid 1", read, StringComparer.Ordinal);
        Assert.Contains("faces 1", read, StringComparer.Ordinal);
        Assert.Contains("edges 4 shared 0 degenerate 1", read, StringComparer.Ordinal);
        ComparePoles(hull, read);
    }

    private static void ComparePoles(HullSurface hull, List<string> read)
    {
        var side = hull.Side;
        Assert.Contains(Invariant($"face 0 kind bspline degrees {side.V.Degree} {side.U.Degree} poles {side.V.Count} {side.U.Count} rational 0"), read, StringComparer.Ordinal);
        var poles = read.Where(l => l.StartsWith("pole ", StringComparison.Ordinal)).Select(l => l.Split(' ')).ToList();
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

    // The skin's area by a fine grid of flat facets.
    private static void CompareArea(HullSurface hull, List<string> read)
    {
        var facets = FacetHydrostatics.Below(hull.Side, 10, 400, 200).Skin / 2;
        var area = Number(Line(read, "face 0 area").Split(' ')[3]) / 1e6;
        Assert.Equal(facets, area, 1e-4 * facets);
    }

    private static List<(double U, double V)> Places =>
        [.. from u in new[] { 0.03, 0.31, 0.5, 0.77, 0.99 } from v in new[] { 0.05, 0.4, 0.8, 1.0 } select (u, v)];

    private static List<string> Read(HullSurface hull)
    {
        using var file = ScratchFile.With(".step", System.Text.Encoding.ASCII.GetBytes(StepFile.Write(hull, Title)));
        // The file's first parameter is v: see StepFile.
        var output = OutsideReader.Run("occt", [file.Path, .. Places.SelectMany(p => new[] { "0", Invariant($"{p.V:R}"), Invariant($"{p.U:R}") })]);
        Assert.True(output.ExitCode == 0, output.Errors);
        return [.. output.Output.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
    }

    private static string Line(List<string> read, string start) => Assert.Single(read, l => l.StartsWith(start, StringComparison.Ordinal));

    // Millimeters: 1e-6 mm is a thousandth of the model length.
    private static void Near(Point3 p, ReadOnlySpan<string> millimeters)
    {
        Assert.Equal(1000 * p.X, Number(millimeters[0]), 1e-6);
        Assert.Equal(1000 * p.Y, Number(millimeters[1]), 1e-6);
        Assert.Equal(1000 * p.Z, Number(millimeters[2]), 1e-6);
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
