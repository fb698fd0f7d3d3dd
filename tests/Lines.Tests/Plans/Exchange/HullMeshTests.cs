using System.Buffers.Binary;
using System.Globalization;
using System.Text.RegularExpressions;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;
using Lines.Kernel.Meshes;
using Lines.Plans.Exchange;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Plans.Exchange;

public class HullMeshTests
{
    private const string Remark = "Hull in mm";

    [Theory]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Every_edge_has_one_triangle_on_each_side(string template)
    {
        var mesh = HullMesh.Of(ShapedTemplates.Of(template).Hull, 1e-3);
        var edges = mesh.Triangles.SelectMany(t => new[] { (t.A, t.B), (t.B, t.C), (t.C, t.A) }).ToList();
        var once = edges.ToHashSet();
        Assert.Equal(edges.Count, once.Count);
        Assert.All(once, e => Assert.Contains((e.Item2, e.Item1), once));
        Assert.Equal(mesh.Vertices.Count, mesh.Vertices.Distinct().Count());

        // Euler: a body without holes through it.
        Assert.Equal(2, mesh.Vertices.Count - (edges.Count / 2) + mesh.Count);
    }

    // Every corner, middle of an edge and centroid of the skin's facets, against a plain search over the surface.
    [Theory]
    [InlineData("silt-sampler", 10, 1)]
    [InlineData("line-layer", 10, 1)]
    [InlineData("gauge-runner-blunt", 0.1, 311)]
    public void Vertices_are_on_the_surface_and_facets_within_the_chord_error(string template, double chordError, int every)
    {
        var hull = ShapedTemplates.Of(template).Hull;
        var mesh = HullMesh.Of(hull, 1e-3 * chordError);
        double Off(Point3 p) => 1000 * NearestOnSkin.Distance(hull.Side.PointAt, new Point3(p.X / 1000, Math.Abs(p.Y) / 1000, p.Z / 1000), (0, 1), (0, 1));
        var skin = mesh.Parts.Where(p => p.Name is "starboard" or "port").SelectMany(p => p.Triangles).Where((_, k) => k % every == 0).ToList();
        Assert.True(skin.Count > 100);
        var greatest = 0.0;
        foreach (var t in skin)
        {
            Point3 a = mesh.Vertices[t.A], b = mesh.Vertices[t.B], c = mesh.Vertices[t.C];
            foreach (var p in new[] { a, b, c })
                Assert.InRange(Off(p), 0, 0.001);
            foreach (var p in new[] { Mean(a, b), Mean(b, c), Mean(c, a), Mean(a, b, c) })
                greatest = Math.Max(greatest, Off(p));
        }

        // Not by a mesh far finer than asked for either.
        Assert.InRange(greatest, 0.2 * chordError, chordError);
    }

    [OutsideReaderTheory("admesh")]
    [InlineData(false, 0)]
    [InlineData(false, 0.05)]
    [InlineData(true, 0)]
    [InlineData(true, 0.05)]
    public void A_crowned_deck_closes_the_body_in_place_of_a_ruled_one(bool transom, double crown)
    {
        const double ChordError = 2e-4;
        var hull = CrownedHulls.With(transom ? SampleHulls.TransomBoat() : SampleHulls.DoubleEnder(), crown);
        var mesh = HullMesh.Of(hull, ChordError);
        var deck = mesh.Parts.Single(p => p.Name == "deck").Triangles;
        Assert.All(deck, t => Assert.True(mesh.NormalOf(t).Z > 0));
        // The two sides are mirrored to the last bit, so each place counts once.
        foreach (var p in deck.SelectMany(t => new[] { t.A, t.B, t.C }).Select(k => mesh.Vertices[k]).Select(p => p with { Y = Math.Abs(p.Y) }).Distinct())
            Assert.InRange(1000 * NearestOnSkin.Distance(hull.Deck!.PointAt, new Point3(p.X / 1000, p.Y / 1000, p.Z / 1000), (0, 1), (0, 1)), 0, 0.001);

        using var file = ScratchFile.With(".stl", StlFile.Write(mesh, Remark));
        var read = OutsideReader.Run("admesh", file.Path);
        Assert.True(read.ExitCode == 0, read.Errors);
        foreach (var fault in (string[])["Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"])
            Assert.Equal(0, Found(read.Output, fault));
        Assert.Equal(1, Found(read.Output, "Number of parts"));

        // An independent sum over the facets, in single precision, against the integrals over both patches.
        var whole = UprightHydrostatics.Enclosed(hull, 1e-10)!;
        Assert.Equal(whole.Volume, 1e-9 * Found(read.Output, "Volume"), (ChordError * whole.WettedSurface) + (1e-5 * whole.Volume));
    }

    // The transom lies in its plane and the deck's facets are level athwartships: both are exact but for their edges, which are the skin's.
    [Fact]
    public void Deck_and_transom_close_the_body_flat()
    {
        var hull = ShapedTemplates.Of("silt-sampler").Hull;
        var mesh = HullMesh.Of(hull, 1e-3);
        var plane = hull.Transom!.Value;
        foreach (var t in mesh.Parts.Single(p => p.Name == "transom").Triangles)
        {
            foreach (var p in new[] { t.A, t.B, t.C }.Select(k => mesh.Vertices[k]))
                Assert.Equal(0, plane.DistanceTo(new Point3(p.X / 1000, p.Y / 1000, p.Z / 1000)), 1e-6);
            Assert.Equal(1, mesh.NormalOf(t).Unit().Dot(plane.Normal), 1e-6);
        }

        Assert.All(mesh.Parts.Single(p => p.Name == "deck").Triangles, t => Assert.True(mesh.NormalOf(t).Y == 0 && mesh.NormalOf(t).Z > 0));
    }

    [OutsideReaderTheory("admesh")]
    [MemberData(nameof(ShapedTemplates.All), MemberType = typeof(ShapedTemplates))]
    public void Admesh_finds_one_closed_body_without_faults_and_its_volume(string template)
    {
        const double ChordError = 5e-4;
        var hull = ShapedTemplates.Of(template).Hull;
        var mesh = HullMesh.Of(hull, ChordError);
        using var file = ScratchFile.With(".stl", StlFile.Write(mesh, Remark));
        var read = OutsideReader.Run("admesh", file.Path);
        Assert.True(read.ExitCode == 0, read.Errors);
        Assert.Contains("File type          : Binary STL file", read.Output, StringComparison.Ordinal);
        Assert.Equal(mesh.Count, Found(read.Output, "Number of facets"));
        foreach (var fault in (string[])["Total disconnected facets", "Degenerate facets", "Edges fixed", "Facets removed", "Facets added", "Facets reversed", "Backwards edges", "Normals fixed"])
            Assert.Equal(0, Found(read.Output, fault));
        Assert.Equal(1, Found(read.Output, "Number of parts"));

        // No facet is further off than the chord error: nor is the volume by more than that over the whole surface, of which deck and transom are
        // less than the skin. Admesh sums in single precision.
        var (area, half) = WholeSkin.Of(hull.Side);
        Assert.Equal(2 * half, 1e-9 * Found(read.Output, "Volume"), (ChordError * 4 * area) + (1e-5 * half));
    }

    [Fact]
    public void An_stl_file_is_its_facets_with_outward_unit_normals()
    {
        var mesh = HullMesh.Of(SampleHulls.TransomBoat(), 1e-2);
        var bytes = StlFile.Write(mesh, Remark);
        Assert.Equal(84 + (50 * mesh.Count), bytes.Length);
        Assert.Equal((uint)mesh.Count, BinaryPrimitives.ReadUInt32LittleEndian(bytes.AsSpan(80)));
        var at = 84;
        foreach (var t in mesh.Triangles)
        {
            Vector3 Next()
            {
                float Single(int k) => BinaryPrimitives.ReadSingleLittleEndian(bytes.AsSpan(at + (4 * k)));
                var v = new Vector3(Single(0), Single(1), Single(2));
                at += 12;
                return v;
            }

            Assert.Equal(1, Next().Dot(mesh.NormalOf(t).Unit()), 1e-6);
            foreach (var corner in new[] { t.A, t.B, t.C })
                Assert.Equal(mesh.Vertices[corner], default(Point3) + Next());
            at += 2;
        }
    }

    [Fact]
    public void An_obj_file_has_the_vertices_and_facets_of_the_stl_file_in_groups()
    {
        var mesh = HullMesh.Of(SampleHulls.TransomBoat(), 1e-2);
        var lines = ObjFile.Write(mesh, Remark).Split('\n').Select(l => l.Split(' ')).ToList();
        Assert.Equal(mesh.Vertices, lines.Where(w => w[0] == "v").Select(w => new Point3(Single(w[1]), Single(w[2]), Single(w[3]))));
        Assert.Equal(mesh.Triangles, lines.Where(w => w[0] == "f").Select(w => new Triangle(Place(w[1]), Place(w[2]), Place(w[3]))));
        Assert.Equal(["starboard", "port", "deck", "transom"], lines.Where(w => w[0] == "g").Select(w => w[1]), StringComparer.Ordinal);
    }

    [OutsideReaderFact("assimp")]
    public void Assimp_reads_the_obj_file_in_its_four_parts()
    {
        var mesh = HullMesh.Of(ShapedTemplates.Of("silt-sampler").Hull, 1e-3);
        using var file = ScratchFile.With(".obj", System.Text.Encoding.ASCII.GetBytes(ObjFile.Write(mesh, Remark)));
        var read = OutsideReader.Run("assimp", "info", file.Path);
        Assert.True(read.ExitCode == 0, read.Errors);
        Assert.Equal(4, Found(read.Output, "Meshes"));
        Assert.Equal(mesh.Count, Found(read.Output, "Faces"));
        Assert.Contains("Minimum point      (0.000000 -560.000000 0.000000)", read.Output, StringComparison.Ordinal);
        Assert.Contains("Maximum point      (4300.000000 560.000000 560.000000)", read.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_hull_gives_the_same_bytes() =>
        Assert.Equal(StlFile.Write(HullMesh.Of(SampleHulls.DoubleEnder(), 1e-3), Remark), StlFile.Write(HullMesh.Of(SampleHulls.DoubleEnder(), 1e-3), Remark));

    [Theory]
    [InlineData(0)]
    [InlineData(9e-6)]
    [InlineData(0.011)]
    [InlineData(double.NaN)]
    public void A_chord_error_out_of_range_is_refused(double chordError) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => HullMesh.Of(SampleHulls.DoubleEnder(), chordError));

    /// <summary>The number behind a name and a colon, where it first stands.</summary>
    private static double Found(string text, string name)
    {
        var found = Regex.Match(text, name + @" *: *(?<n>\S+)", RegexOptions.NonBacktracking);
        Assert.True(found.Success, $"{name} in: {text}");
        return double.Parse(found.Groups["n"].Value, NumberStyles.Float, CultureInfo.InvariantCulture);
    }

    private static Point3 Mean(params Point3[] points) => new(points.Average(p => p.X), points.Average(p => p.Y), points.Average(p => p.Z));

    private static double Single(string text) => float.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static int Place(string text) => int.Parse(text, CultureInfo.InvariantCulture) - 1;
}
