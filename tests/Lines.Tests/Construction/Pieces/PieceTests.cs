using Lines.Construction;
using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Construction.Pieces;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Pieces;

public class PieceTests
{
    private const double Foot = 0.3048;

    [Fact]
    public void Two_ends_of_four_feet_on_a_middle_of_twelve_make_twenty_less_the_saw_cuts()
    {
        // Common practice, no source.
        var ends = Piece.Ends(20 * Foot, [4 * Foot, 16 * Foot], 0.004);
        Assert.Equal([(4 * Foot) - 0.002, (12 * Foot) - 0.004, (4 * Foot) - 0.002], ends.Select(e => e.Aft - e.Fore), (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal([(0, 5.2)], Piece.Ends(5.2, [], 0.004));
    }

    [Theory]
    [InlineData(4.0, 3.0)]
    [InlineData(1.0, 6.0)]
    [InlineData(0.0, 2.0)]
    [InlineData(2.0, 2.003)]
    public void Joints_out_of_order_or_outside_the_hull_or_nearer_than_the_saw_is_wide_are_refused(double first, double second) =>
        Assert.Throws<ArgumentException>(() => Piece.Ends(5, [first, second], 0.004));

    [Theory]
    [InlineData("sample-courier")]
    [InlineData("line-layer")]
    public void Pieces_of_a_template_enclose_and_weigh_together_what_the_whole_does(string template)
    {
        var shaped = ShapedTemplates.Of(template);
        var (hull, build) = (shaped.Hull, shaped.Design.Build with { JointGap = 0.001 });
        var pieces = Piece.Of(hull, build, MoldPlan.Of(hull, build));
        Assert.Equal(build.Joints.Count + 1, pieces.Count);
        var whole = CompartmentBody.Between(new PlacedHull("hull", hull, default), "whole", 0, hull.Dials.Length).Below(WaterPlane.LevelAt(9), 1e-6).Volume;

        // What the saw takes is a breadth times a depth times its width at most.
        Assert.InRange(whole - pieces.Sum(p => p.Volume), 0, build.Joints.Count * 0.001 * hull.Dials.Beam * hull.Dials.Depth);
        Assert.Equal(1, pieces.Sum(p => p.Mass) / HullWeight.Of(hull, build).With(MoldPlan.Of(hull, build).Bulkheads, build.Material).Mass, 2e-3);
        Assert.All(pieces, p => Assert.Contains(p.Weight.Parts, part => part.Key == "bulkheads"));
        Assert.Equal(hull.Dials.Beam, pieces.Max(p => p.Breadth), 1e-4);
        Assert.Equal(shaped.Molds.Molds.Count, pieces.Sum(p => p.Molds.Count));
        int Others(int piece) => build.Bulkheads.Count(b => build.Joints.Count(j => j < b.At) == piece);
        Assert.Equal([1 + Others(0), 2 + Others(1), 1 + Others(2)], pieces.Select(p => p.Bulkheads.Count));
        var group = Assert.Single(PieceFigures.Of(pieces));
        Assert.Equal(pieces.Max(p => p.Aft - p.Fore), group.Figures.Single(f => f.Key is "longest_piece").Value!.Value, 1e-12);
    }

    [Fact]
    public void A_hull_in_one_piece_has_no_pieces_to_tell_but_is_stored_too()
    {
        var hull = SampleHulls.DoubleEnder();
        var build = new BuildDials { Planking = 0.006, Gunwale = 0.019, StemMolding = 0.025 };
        var pieces = Piece.Of(hull, build, MoldPlan.Of(hull, build));
        Assert.Empty(PieceFigures.Of(pieces));
        var piece = Assert.Single(pieces);
        // The surface is 5.2 m long; an outer stem stands before each end and an outwale on each side.
        Assert.Equal(5.25, piece.Stored[0], 1e-9);
        Assert.Equal(piece.Breadth + 0.038, piece.Stored[1], 1e-12);
        Assert.True(piece.Fits([.. piece.Stored]));
        Assert.True(piece.Fits([piece.Stored[1], piece.Stored[2], piece.Stored[0]]));
        Assert.False(piece.Fits([5.249, 2, 2]));
        Assert.Empty(PieceFigures.TooLarge(pieces, null, LengthNotation.Millimeters));
        Assert.Single(PieceFigures.TooLarge(pieces, [5, 2, 2], LengthNotation.Millimeters));
    }

    [Fact]
    public void What_does_not_go_into_the_space_given_is_told_at_its_place_in_the_file()
    {
        var shaped = ShapedTemplates.Of("sample-courier");
        var text = shaped.Design.Source.Text.Replace("[build]", "[build]\nstorage = [\"2.05 m\", \"600 mm\", \"450 mm\"]", StringComparison.Ordinal);
        var design = DesignFile.Read(text, "courier.toml").Design!;
        var faults = design.Source.ExplainStorage(Piece.Of(shaped.Hull, design.Build, shaped.Molds));
        // Bow and stern are 511.5 mm and 470 mm high.
        Assert.Equal(2, faults.Count);
        Assert.All(faults, f => Assert.Equal("build.storage", f.Key));
        Assert.Contains("piece 1", faults[0].Problem, StringComparison.Ordinal);
        Assert.Contains("piece 3", faults[1].Problem, StringComparison.Ordinal);
    }
}
