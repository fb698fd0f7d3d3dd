using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Loading;
using Lines.Kernel.Geometry;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

/// <summary>The tables that may stand several times: outriggers, loads, compartments.</summary>
public sealed class VesselTableTests
{
    private const string Float = """
        [[outrigger]]
        side = "both"
        spacing = "1.10 m"
        height = "60 mm"
        aft = "900 mm"
        [outrigger.hull]
        length = "3.60 m"
        beam = "200 mm"
        depth = "220 mm"
        draft = "90 mm"
        crown = "30 mm"
        [outrigger.hull.bow]
        entry_fullness = 0.62
        rocker = "30 mm"
        sheer = "250 mm"
        forefoot = "150 mm"
        [outrigger.hull.stern]
        kind = "pointed"
        run_fullness = 0.60
        rocker = "30 mm"
        sheer = "240 mm"
        heel = "150 mm"
        [outrigger.hull.midship]
        deadrise = "10 deg"
        fullness = 0.78
        flare = "5 deg"

        """;

    private const string Rest = """
        [[load]]
        name = "paddler"
        mass = "80 kg"
        at = ["2.9 m", "0 m", "0.45 m"]
        cases = ["solo", "two up"]
        [[load]]
        name = "mate"
        mass = "150 lb"
        at = ["2 ft", "-6 in", "18 in"]
        cases = ["two up"]
        [[load]]
        name = "anchor"
        mass = "4 kg"
        at = ["0.5 m", "0 m", "0.1 m"]
        [[compartment]]
        name = "bow"
        from = "0.1 m"
        to = "1.1 m"
        sealed = true
        [[compartment]]
        from = "4.0 m"
        to = "5.1 m"

        """;

    private static string Whole => SampleDesigns.Pointed + Float + Rest;

    [Fact]
    public void The_tables_become_the_vessel_in_SI()
    {
        var design = Sound(Whole);
        var vessel = design.Vessel;
        var pair = Assert.Single(vessel.Outriggers);
        Assert.Equal((OutriggerSide.Both, 1.1, 0.06, 0.9), (pair.Side, pair.Spacing, pair.Height, pair.Aft));
        Assert.Equal((3.6, 0.2, 0.22, 0.09, 0.03), (pair.Hull.Length, pair.Hull.Beam, pair.Hull.Depth, pair.Hull.Draft, pair.Hull.Crown));
        Assert.Equal(10 * Math.PI / 180, pair.Hull.Midship.Deadrise, 1e-12);
        Assert.Equal(new Rig(7.5, 2.3, 2.1), vessel.Rig);
        Assert.Equal(new Structure(38, new Point3(2.6, 0, 0.2)), vessel.Structure);
        Assert.Equal(["paddler", "mate", "anchor"], vessel.Loads.Select(l => l.Name), StringComparer.Ordinal);
        Assert.Equal(150 * 0.45359237, vessel.Loads[1].Mass, 1e-12);
        Assert.Equal(-6 * 0.0254, vessel.Loads[1].At.Y, 1e-12);
        Assert.Null(vessel.Loads[2].Cases);
        Assert.Equal(["solo", "two up"], vessel.Cases.Select(c => c.Name), StringComparer.Ordinal);
        Assert.Equal([84, 84 + (150 * 0.45359237)], vessel.Cases.Select(c => c.Mass));
        Assert.Equal([new Compartment("bow", 0.1, 1.1, true), new Compartment("compartment 2", 4, 5.1, false)], vessel.Compartments);
    }

    [Fact]
    public void An_outrigger_is_a_design_of_its_own_in_one_piece()
    {
        var design = Sound(Whole);
        var own = Assert.Single(design.Outriggers);
        Assert.Equal("Gauge Tender, outrigger 1", own.Title);
        Assert.Equal(design.Vessel.Outriggers[0].Hull, own.Vessel.MainHull);
        Assert.Empty(own.Build.Joints);
        Assert.Null(own.Build.MoldAt);
        Assert.Equal(design.Build.Planking, own.Build.Planking);
        Assert.Equal("outrigger.hull.bow.rocker", own.Source.PathOf(Dial.BowRocker));
        Assert.Equal("hull.bow.rocker", design.Source.PathOf(Dial.BowRocker));
    }

    [Fact]
    public void A_float_takes_targets_as_the_main_hull_does()
    {
        var text = Whole.Replace("draft = \"90 mm\"", "displacement = \"30 kg\"", StringComparison.Ordinal);
        var targets = Assert.Single(Sound(text).Vessel.Outriggers).Targets;
        Assert.Equal([new HullTarget(Target.Displacement, 30)], targets.Asked);
        Assert.Equal([Dial.Draft], targets.LeftOut);
    }

    [Theory]
    // an outrigger's keys, as the main hull's
    [InlineData("side = \"both\"", "side = \"bath\"", "56:8: outrigger.side: has the unknown word \"bath\"; did you mean \"both\"? It takes \"port\" or \"starboard\" or \"both\"")]
    [InlineData("spacing = \"1.10 m\"", "spacing = 1.10", "57:11: outrigger.spacing: 1.10 has no unit; write \"1.10 m\" or \"1.10 ft\", whichever is meant")]
    [InlineData("spacing = \"1.10 m\"", "spaceing = \"1.10 m\"", "57:1: outrigger.spaceing: is not a key of a design file; did you mean spacing?")]
    [InlineData("spacing = \"1.10 m\"\n", "", "55:3: outrigger.spacing: is missing; add a line like spacing = \"1.10 m\"")]
    [InlineData("beam = \"200 mm\"", "beam = \"90 mm\"", "62:8: outrigger.hull.beam: \"90 mm\" is below 100 mm; give 120 mm to 1.44 m")]
    [InlineData("draft = \"90 mm\"", "draft = \"230 mm\"", "64:9: outrigger.hull.draft: \"230 mm\" reaches the sheer: it is not below the depth; give less than 220 mm (the depth)")]
    [InlineData("crown = \"30 mm\"", "crown = \"60 mm\"", "65:9: outrigger.hull.crown: \"60 mm\" is more than a quarter of the beam; give at most 50 mm (the beam / 4)")]
    [InlineData("heel = \"150 mm\"\n", "", "71:2: outrigger.hull.stern.heel: is missing; add a line like heel = \"220 mm\"")]
    [InlineData("[outrigger.hull.midship]", "[outrigger.hull.midschip]", "77:2: outrigger.hull.midschip: is not a table of a design file; did you mean [outrigger.hull.midship]?")]
    [InlineData("[[outrigger]]", "[outrigger]", "55:2: outrigger: is in single brackets; write [[outrigger]] on a line of its own above its keys: there may be several")]
    [InlineData("[[outrigger]]\nside = \"both\"\nspacing = \"1.10 m\"\nheight = \"60 mm\"\naft = \"900 mm\"\n", "", "55:2: outrigger: stands under no [[outrigger]]; write [[outrigger]] on a line of its own above its keys: there may be several")]
    [InlineData("[outrigger.hull]", "[[outrigger.hull]]", "60:3: outrigger.hull: is in double brackets; write [outrigger.hull]: an outrigger has one")]
    [InlineData("[[outrigger]]", "[[outrigger", "55:1: outrigger: has no closing bracket; write [[outrigger]] alone on its line")]
    // hulls that overlap
    [InlineData("spacing = \"1.10 m\"", "spacing = \"400 mm\"", "57:11: outrigger.spacing: \"400 mm\" makes it overlap the main hull: half their beams together are 470 mm; give at least 470 mm")]
    // loads
    [InlineData("at = [\"2.9 m\", \"0 m\", \"0.45 m\"]", "at = [\"2.9 m\", \"0 m\"]", "84:6: load.at: has 2 members; give three, aft, to starboard and up, like [\"2.9 m\", \"0 m\", \"0.45 m\"]")]
    [InlineData("at = [\"2.9 m\", \"0 m\", \"0.45 m\"]", "at = [\"2.9 m\", \"0 m\", 450]", "84:23: load.at: 450 has no unit; write \"450 mm\" or \"450 cm\" or \"450 in\", whichever is meant")]
    [InlineData("at = [\"2.9 m\", \"0 m\", \"0.45 m\"]", "at = [\"29 m\", \"0 m\", \"0.45 m\"]", "84:7: load.at: \"29 m\" is above 17 m; give -6 m to 17 m")]
    [InlineData("at = [\"2.9 m\", \"0 m\", \"0.45 m\"]", "at = \"2.9 m\"", "84:6: load.at: \"2.9 m\" is a text; write a list of three lengths, like [\"2.9 m\", \"0 m\", \"0.45 m\"]")]
    [InlineData("mass = \"80 kg\"", "mass = 80", "83:8: load.mass: 80 has no unit; write \"80 kg\" or \"80 lb\", whichever is meant")]
    [InlineData("name = \"mate\"", "name = \"Paddler\"", "87:8: load.name: \"Paddler\" is the name of another load, at line 82; give each a name of its own")]
    [InlineData("cases = [\"two up\"]", "cases = [\"Two-up\"]", "90:10: load.cases: \"Two-up\" is written otherwise at line 85, and two cases cannot be meant; write \"two up\"")]
    [InlineData("cases = [\"two up\"]", "cases = [\"two up\", \"two up\"]", "90:20: load.cases: \"two up\" is named twice; name it once")]
    [InlineData("cases = [\"two up\"]", "cases = []", "90:9: load.cases: names none; give 1 to 100, or leave the key out for every case")]
    [InlineData("cases = [\"two up\"]", "cases = \"two up\"", "90:9: load.cases: \"two up\" is a text; write a list of names, like [\"solo\", \"two up\"]")]
    // compartments
    [InlineData("to = \"1.1 m\"", "to = \"0.1 m\"", "98:6: compartment.to: \"0.1 m\" is not aft of where it begins; give more than 100 mm (from)")]
    [InlineData("to = \"5.1 m\"", "to = \"5.3 m\"", "102:6: compartment.to: \"5.3 m\" is beyond the stern of the main hull; give at most 5.2 m (the length)")]
    [InlineData("from = \"4.0 m\"", "from = \"1.0 m\"", "101:8: compartment.from: \"1.0 m\" is within the compartment at line 95, which ends at \"1.1 m\"; give at least 1.1 m")]
    [InlineData("sealed = true", "sealed = \"yes\"", "99:10: compartment.sealed: \"yes\" is a text; write true, without quotes")]
    // rig and structure
    [InlineData("area = \"7.5 m2\"", "area = \"7.5\"", "48:8: rig.area: \"7.5\" has no unit; write \"7.5 m2\" or \"7.5 ft2\", whichever is meant")]
    [InlineData("area = \"7.5 m2\"", "area = \"75 m2\"", "48:8: rig.area: \"75 m2\" is above 60 m2; give 0.5 m2 to 60 m2")]
    [InlineData("area = \"7.5 m2\"\n", "", "47:2: rig.area: is missing; add a line like area = \"7.5 m2\"")]
    [InlineData("area = \"7.5 m2\"", "sail_area = \"7.5 m2\"", "48:1: rig.sail_area: is not a key of a design file; did you mean area?")]
    [InlineData("[rig]", "[[rig]]", "47:3: rig: is in double brackets; write [rig]: a vessel has one")]
    [InlineData("widest = 0.50", "spacing = \"1.1 m\"", "8:1: hull.spacing: is not a key of a design file; it belongs in [[outrigger]]")]
    public void One_fault_is_told_at_its_place_with_what_would_be_right(string line, string instead, string expected)
    {
        Assert.Contains(line, Whole, StringComparison.Ordinal);
        var at = Whole.IndexOf(line, StringComparison.Ordinal);
        var text = string.Concat(Whole.AsSpan(0, at), instead, Whole.AsSpan(at + line.Length));

        var faults = DesignFile.Read(text, "a.toml").Diagnostics;

        Assert.Equal("a.toml:" + expected, Assert.Single(faults).Headline);
    }

    [Fact]
    public void Floats_in_each_other_are_told_and_those_behind_each_other_are_not()
    {
        string Second(string aft) => Whole + Float.Replace("side = \"both\"", "side = \"port\"", StringComparison.Ordinal).Replace("1.10 m", "1.25 m", StringComparison.Ordinal).Replace("900 mm", aft, StringComparison.Ordinal);

        var fault = Assert.Single(DesignFile.Read(Second("1.2 m"), "a.toml").Diagnostics);
        Assert.Equal("outrigger.spacing", fault.Key);
        Assert.Contains("\"1.25 m\" makes it overlap the outrigger at line 55: that has \"1.10 m\", and half their beams together are 200 mm; give at least 1.3 m", fault.Headline, StringComparison.Ordinal);
        Assert.Equal(2, Sound(Second("4.6 m")).Vessel.Outriggers.Count);
    }

    [Fact]
    public void Every_fault_of_all_tables_is_told_in_one_run()
    {
        var text = Whole.Replace("rocker = \"30 mm\"", "rocker = 30", StringComparison.Ordinal).Replace("mass = \"4 kg\"", "mass = \"4 stone\"", StringComparison.Ordinal)
            .Replace("to = \"1.1 m\"", "too = \"1.1 m\"", StringComparison.Ordinal).Replace("beam = \"740 mm\"", "beam = 740", StringComparison.Ordinal);
        Assert.Equal(
            ["5 hull.beam", "68 outrigger.hull.bow.rocker", "74 outrigger.hull.stern.rocker", "93 load.mass", "98 compartment.too"],
            DesignFile.Read(text, "a.toml").Diagnostics.Select(f => Invariant($"{f.Place.Line} {f.Key}")),
            StringComparer.Ordinal);
    }

    [Fact]
    public void Dials_of_a_float_that_exclude_each_other_are_told_at_their_own_places()
    {
        var source = Sound(Whole).Outriggers[0].Source;
        var faults = source.Explain([new DialConflict("no convex section is as full", [new DialHint(Dial.MidshipFullness, 0.7) { Fair = true }, new DialHint(Dial.Deadrise, null)])]);
        Assert.Equal(
            [
                "a.toml:78:12: outrigger.hull.midship.deadrise: \"10 deg\": no convex section is as full; no other value of it alone was found to do",
                "a.toml:79:12: outrigger.hull.midship.fullness: 0.78: does not go with outrigger.hull.midship.deadrise (line 78), as said there; nearest feasible 0.7, the others kept",
            ],
            faults.Select(f => f.Headline),
            StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("cases = [\"two up\", \"sailing\"]", "cases = [\"two up\", \"sailng\"]", "note: load.cases: \"sailng\" is a case that no other load names, nearly \"sailing\"; write it the same where one case is meant")]
    [InlineData("[\"1.60 m\", \"0 mm\", \"150 mm\"]", "[\"6.10 m\", \"0 mm\", \"150 mm\"]", "note: load.at: its center is 300 mm abaft all hulls; see that it is carried out there")]
    [InlineData("[\"1.60 m\", \"0 mm\", \"150 mm\"]", "[\"1.60 m\", \"-1.4 m\", \"150 mm\"]", "note: load.at: its center is 135 mm to port of all hulls; see that it is carried out there")]
    [InlineData("[\"2.85 m\", \"0 mm\", \"330 mm\"]", "[\"-20 mm\", \"0 mm\", \"330 mm\"]", "note: structure.at: its center is 20 mm ahead of all hulls; see that it is carried out there")]
    [InlineData("cases = [\"two up\", \"sailing\"]", "cases = [\"two up\", \"sailing 2\"]", null)]
    public void What_looks_mistaken_in_the_loads_is_a_note_at_its_place(string old, string written, string? told)
    {
        var shaped = ShapedTemplates.Of("sample-courier");
        var hulls = new VesselShape(shaped.Hull, [.. shaped.Design.Vessel.Outriggers.Select(o => (o, HullShape.Solve(o.Hull).Surface!))]);
        Assert.Empty(shaped.Design.Source.ExplainLoads(hulls));
        var notes = Sound(shaped.Design.Source.Text.Replace(old, written, StringComparison.Ordinal)).Source.ExplainLoads(hulls);
        Assert.Equal(told is null ? [] : [told], notes.Select(n => n.Headline[(n.Headline.IndexOf(": ", StringComparison.Ordinal) + 2)..]));
    }

    private static VesselDesign Sound(string text)
    {
        var reading = DesignFile.Read(text, "a.toml");
        Assert.Empty(reading.Diagnostics.Select(d => d.Headline));
        return reading.Design!;
    }
}
