using Lines.Construction.Molds;
using Lines.Design;
using Lines.Design.Studies;
using Lines.Hull.Form;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed class StretchingTests
{
    private const double Degree = Math.PI / 180;

    /// <summary>A design is shown in the notation it is written in; a few strays do not change that.</summary>
    [Theory]
    [InlineData(LengthNotation.Millimeters, 0.01)]
    [InlineData(LengthNotation.Inches, 0.0254)]
    [InlineData(LengthNotation.FeetInches, 0.0254)]
    [InlineData(LengthNotation.FeetInchesEighths, 0.0254)]
    public void A_design_is_shown_in_the_notation_of_most_of_its_lengths_and_its_strongback_measures_whole_steps(LengthNotation notation, double step)
    {
        var text = Stretching.Stretch(SampleDesigns.Pointed, new StretchWish { Notation = notation });
        var stray = notation == LengthNotation.Millimeters ? "19 in" : "480 mm";
        var lines = text.Split('\n').Select(l => l.StartsWith("sheer =", StringComparison.Ordinal) ? $"sheer = \"{stray}\"" : l).ToList();
        Assert.Contains($"sheer = \"{stray}\"", lines);
        var design = DesignFile.Read(string.Join('\n', lines), "x.toml").Design!;
        Assert.Equal(notation, design.Source.Notation);
        var strongback = Strongback.For(SampleHulls.DoubleEnder(), design.Build with { StrongbackTop = null });
        Assert.All((double[])[strongback.Width, strongback.Top, -strongback.ForeX], v => Assert.Equal(Math.Round(v / step), v / step, 1e-9));
        Assert.InRange(-strongback.ForeX, 0.100, 0.100 + step);
    }

    [Fact]
    public void Any_length_in_feet_makes_inches_its_short_lengths_and_none_of_those_is_written_with_a_zero()
    {
        foreach (var template in ShapedTemplates.Names)
        {
            var text = Stretching.Stretch(File.ReadAllText(Repository.PathOf("templates", template + ".toml")), new StretchWish { Notation = LengthNotation.FeetInches });
            Assert.Equal(LengthNotation.FeetInches, DesignFile.Read(text, "x.toml").Design!.Source.Notation);
            Assert.DoesNotContain("\"0 ", text.Replace("\"0 in\"", "", StringComparison.Ordinal), StringComparison.Ordinal); // a place on the centerline is 0 in
            Assert.DoesNotMatch("(?<![0-9])0 ft", text);
        }

        // One length in feet beside dozens in inches: the vote of inches alone would win.
        var inches = Stretching.Stretch(SampleDesigns.Pointed, new StretchWish { Length = "17 ft", Notation = LengthNotation.Inches });
        Assert.Equal(LengthNotation.FeetInches, DesignFile.Read(inches.Replace("204 in", "17 ft", StringComparison.Ordinal), "x.toml").Design!.Source.Notation);
    }

    [Fact]
    public void Nothing_wished_changes_nothing()
    {
        Assert.Equal(SampleDesigns.Pointed, Stretching.Stretch(SampleDesigns.Pointed, new StretchWish()));
        Assert.Equal(SampleDesigns.Transom, Stretching.Stretch(SampleDesigns.Transom, new StretchWish()));
    }

    [Fact]
    public void A_metric_design_asked_for_in_inches_has_no_millimeters_left()
    {
        var text = Stretching.Stretch(SampleDesigns.Pointed, new StretchWish { Length = "17 ft", Notation = LengthNotation.Inches });

        Assert.DoesNotContain(" mm\"", text, StringComparison.Ordinal);
        Assert.DoesNotContain(" m\"", text, StringComparison.Ordinal);
        Assert.Empty(DesignFile.Read(text, "a.toml").Diagnostics);
    }

    [Fact]
    public void In_another_notation_the_comments_of_a_table_still_stand_in_one_column()
    {
        var template = File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"));
        foreach (var table in Stretching.Stretch(template, new StretchWish { Length = "17 ft", Notation = LengthNotation.Inches }).Split("\n\n"))
            Assert.InRange(table.Split('\n').Where(l => l.Contains('=', StringComparison.Ordinal)).Select(l => l.IndexOf('#', StringComparison.Ordinal)).Distinct().Count(), 0, 1);
    }

    [Fact]
    public void Only_the_values_change_never_the_page()
    {
        var text = Stretching.Stretch(SampleDesigns.Pointed, new StretchWish { Length = "6 m", Beam = "0.8 m", Depth = "40 cm", Title = "Long \"Tender\"" });

        Assert.Contains("title = \"Long \\\"Tender\\\"\"          # printed on every sheet\n", text, StringComparison.Ordinal);
        Assert.Contains("length = \"6 m\"\nbeam = \"0.8 m\"\ndepth = \"40 cm\"\n", text, StringComparison.Ordinal);
        Assert.Equal(SampleDesigns.Pointed.Split('\n').Select(Name), text.Split('\n').Select(Name), StringComparer.Ordinal);

        static string Name(string line) => line.Split('=')[0];
    }

    [Fact]
    public void Targets_follow_what_they_measure()
    {
        // Closed form: 1.1 times as long, 1.2 times as wide and 1.05 times as high hold 1.386 times as much.
        var text = new EditedDesign(SampleDesigns.Pointed).With("hull.draft", null).With("hull.bow.entry_fullness", null).With("hull.displacement", "\"100 kg\"").With("hull.prismatic", "0.56").Text;
        var after = Stretching.Stretch(text, new StretchWish { Length = "5.72 m", Beam = "888 mm", Depth = "378 mm" });

        Assert.Contains("displacement = \"138.6 kg\"", after, StringComparison.Ordinal);
        Assert.Contains("prismatic = 0.56", after, StringComparison.Ordinal);
        Assert.Contains("displacement = \"220.5 lb\"", Stretching.Stretch(text, new StretchWish { Notation = LengthNotation.Inches }), StringComparison.Ordinal);

        var lines = new EditedDesign(SampleDesigns.Pointed).With("hull.midship.fullness", null).With("hull.length", null).With("hull.waterline_length", "\"5 m\"").With("hull.waterline_beam", "\"700 mm\"").Text;
        var wider = Stretching.Stretch(lines, new StretchWish { Beam = "777 mm" });
        Assert.Contains("waterline_beam = \"735 mm\"", wider, StringComparison.Ordinal);
        Assert.Contains("waterline_length = \"5 m\"", wider, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Stretching.Stretch(lines, new StretchWish { Length = "6 m" }));
    }

    [Fact]
    public void Lengths_heights_and_breadths_follow_their_own_factor_and_angles_their_tangents()
    {
        // Closed form: twice as long, half as wide, three halves as high.
        var before = Read(SampleDesigns.Pointed);

        var after = Read(Stretching.Stretch(SampleDesigns.Pointed, new StretchWish { Length = "10.4 m", Beam = "370 mm", Depth = "540 mm", Draft = "160 mm" }));

        var (a, b) = (before.Vessel.MainHull, after.Vessel.MainHull);
        var (p, q) = ((PointedStern)a.Stern, (PointedStern)b.Stern);
        Assert.Equal((0.16, 0.075, 0.78, 0.72), (b.Draft, b.Bow.Rocker, b.Bow.Sheer, q.Sheer));
        Assert.Equal((2 * a.Bow.Forefoot, 2 * p.Heel), (b.Bow.Forefoot, q.Heel));
        Assert.Equal(Math.Atan(3 * Math.Tan(a.Midship.Deadrise)), b.Midship.Deadrise, 0.05 * Degree);
        Assert.Equal(Math.Atan(3 * Math.Tan(a.Bow.Vee!.Value)), b.Bow.Vee!.Value, 0.05 * Degree);
        Assert.Equal(Math.Atan(Math.Tan(a.Midship.Flare) / 3), b.Midship.Flare, 0.05 * Degree);
        Assert.Equal(Math.Atan(Math.Tan(a.Bow.EntryAngle!.Value) / 4), b.Bow.EntryAngle!.Value, 0.05 * Degree);
        Assert.Equal((a.Widest, a.Bow.EntryFullness, a.Bow.SheerFullness), (b.Widest, b.Bow.EntryFullness, b.Bow.SheerFullness));
        Assert.Equal([2.6, 7.8], after.Build.Joints);
        Assert.Equal((before.Build.Planking, before.Build.MoldSpacing), (after.Build.Planking, after.Build.MoldSpacing));
    }

    [Fact]
    public void The_rake_of_a_transom_follows_length_over_height()
    {
        var before = (TransomStern)Read(SampleDesigns.Transom).Vessel.MainHull.Stern;

        var after = (TransomStern)Read(Stretching.Stretch(
            SampleDesigns.Transom, new StretchWish { Length = "27 ft 6 in", Notation = LengthNotation.FeetInches })).Vessel.MainHull.Stern;

        Assert.Equal(Math.Atan(2 * Math.Tan(before.Rake)), after.Rake, 0.05 * Degree);
        Assert.Equal((before.Breadth, before.Foot), (after.Breadth, after.Foot));
    }

    [Fact]
    public void An_unsound_design_is_not_stretched()
    {
        Assert.Throws<ArgumentException>(() => Stretching.Stretch("title = 5", new StretchWish()));
    }

    private static VesselDesign Read(string text)
    {
        var reading = DesignFile.Read(text, "stretched.toml");
        Assert.Empty(reading.Diagnostics.Select(d => d.ToString()));
        return reading.Design!;
    }

    [Fact]
    public void Outriggers_loads_and_bulkheads_follow_the_main_hull_and_masses_stay()
    {
        var text = File.ReadAllText(Repository.PathOf("templates", "sample-courier.toml"));
        var before = DesignFile.Read(text, "x.toml").Design!.Vessel;
        // Half as long again, double the beam, nine tenths of the height.
        var after = DesignFile.Read(Stretching.Stretch(text, new StretchWish { Length = "8.70 m", Beam = "1100 mm", Depth = "360 mm" }), "x.toml").Design!.Vessel;
        var (was, now) = (before.Outriggers[0], after.Outriggers[0]);
        Assert.Equal((2 * was.Spacing, 1.5 * was.Aft), (now.Spacing, now.Aft));
        Assert.Equal(0.9 * was.Height, now.Height, 0.00051);
        Assert.Equal((1.5 * was.Hull.Length, 2 * was.Hull.Beam), (now.Hull.Length, now.Hull.Beam));
        Assert.Equal(0.9 * was.Hull.Crown!.Value, now.Hull.Crown!.Value, 0.00051);
        Assert.Equal(before.Loads.Select(l => (l.Name, l.Mass)), after.Loads.Select(l => (l.Name, l.Mass)));
        Assert.All(before.Loads.Zip(after.Loads), p => Assert.Equal((1.5 * p.First.At.X, 2 * p.First.At.Y, 0.9 * p.First.At.Z), (p.Second.At.X, p.Second.At.Y, p.Second.At.Z), Within));
        Assert.Equal(before.Compartments.Select(c => 1.5 * c.To), after.Compartments.Select(c => c.To), (a, b) => Math.Abs(a - b) < 0.00051);
        Assert.Equal((before.Rig!.Area, before.Rig.Height, before.Structure!.Mass), (after.Rig!.Area, after.Rig.Height, after.Structure!.Mass));

        static bool Within((double X, double Y, double Z) a, (double X, double Y, double Z) b) =>
            Math.Max(Math.Abs(a.X - b.X), Math.Max(Math.Abs(a.Y - b.Y), Math.Abs(a.Z - b.Z))) < 0.00051;
    }
}
