using Lines.Design;
using Lines.Design.Diagnostics;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed class DesignFaultTests
{
    [Theory]
    // unknown, missing, twice
    [InlineData("hull", "length", "lenght = \"5.20 m\"", "4:1: hull.lenght: is not a key of a design file; did you mean length?")]
    [InlineData("hull", "widest", "chines = 2", "8:1: hull.chines: is not a key of a design file; the keys here are length, beam")]
    [InlineData("hull", "widest", "planking = \"6 mm\"", "8:1: hull.planking: is not a key of a design file; it belongs in [build]")]
    [InlineData("hull", "beam", "", "3:2: hull.beam: is missing; add a line like beam = \"740 mm\"")]
    [InlineData("hull", "widest", "beam = \"700 mm\"", "8:1: hull.beam: is given already at line 5; keep one of the two")]
    [InlineData("", "title", "", "1:1: title: is missing; add a line like title =")]
    // types
    [InlineData("hull", "widest", "widest = \"0.50\"", "8:10: hull.widest: \"0.50\" is a text; write 0.50 without quotes")]
    [InlineData("hull", "widest", "widest = \"half\"", "8:10: hull.widest: \"half\" is a text; write a plain number from 0.4 to 0.6, without quotes")]
    [InlineData("hull", "widest", "widest = 50", "8:10: hull.widest: 50 is above 0.6; give 0.4 to 0.6, so 0.5 if per cent are meant")]
    [InlineData("hull", "hollow", "hollow = \"no\"", "10:10: hull.hollow: \"no\" is a text; write false, without quotes")]
    [InlineData("hull", "draft", "draught = \"115 mm\"", "7:1: hull.draught: is not a key of a design file; did you mean draft?")]
    [InlineData("hull", "beam", "beam = { value = \"740 mm\" }", "5:1: hull.beam: is a table here; it is a key with a value, like beam = \"740 mm\"")]
    [InlineData("hull", "hollow", "hollow = 0", "10:10: hull.hollow: 0 is a bare number; write true or false, without quotes")]
    [InlineData("hull", "beam", "beam = true", "5:8: hull.beam: true is a true-or-false value; write a length in quotes, like \"740 mm\"")]
    [InlineData("hull", "beam", "beam = [1]", "5:8: hull.beam: [1] is a list; write a length in quotes")]
    [InlineData("hull", "beam", "beam = 2026-11-25", "5:8: hull.beam: 2026-11-25 is a date or time; write a length in quotes")]
    [InlineData("build", "joints", "joints = \"1.30 m\"", "43:10: build.joints: \"1.30 m\" is a text; write a list of lengths")]
    [InlineData("hull.stern", "kind", "kind = \"transome\"", "22:8: hull.stern.kind: has the unknown word \"transome\"; did you mean \"transom\"?")]
    [InlineData("", "title", "title = \"\"", "1:9: title: is empty; write one line of 1 to 60 characters")]
    [InlineData("", "title", "title = \"a\\nb\"", "1:9: title: has a line break")]
    // units
    [InlineData("hull", "beam", "beam = 740", "5:8: hull.beam: 740 has no unit; write \"740 mm\"")]
    [InlineData("hull", "length", "length = 5.2", "4:10: hull.length: 5.2 has no unit; write \"5.2 m\" or \"5.2 ft\", whichever is meant")]
    [InlineData("hull", "length", "length = \"5200\"", "4:10: hull.length: \"5200\" has no unit; write \"5200 mm\"")]
    [InlineData("hull", "depth", "depth = \"5' 14\\\"\"", "6:9: hull.depth: \"5' 14\\\"\" has 14 inches; after feet write 0 to 11")]
    [InlineData("hull.bow", "vee", "vee = 45", "18:7: hull.bow.vee: 45 has no unit; write \"45 deg\"")]
    [InlineData("hull.bow", "vee", "vee = \"45 mm\"", "18:7: hull.bow.vee: \"45 mm\" has the unknown unit \"mm\"; angles are in deg or rad")]
    // ranges
    [InlineData("hull", "beam", "beam = nan", "5:8: hull.beam: nan is not a number anybody can build to; give 100 mm to 3 m")]
    [InlineData("hull", "widest", "widest = inf", "8:10: hull.widest: inf is not a number anybody can build to; give 0.4 to 0.6")]
    [InlineData("hull", "beam", "beam = \"-740 mm\"", "5:8: hull.beam: \"-740 mm\" is below 100 mm; give 173.4 mm to 2.08 m")]
    [InlineData("hull", "length", "length = \"5.20 mm\"", "4:10: hull.length: \"5.20 mm\" is below 1 m; give more than 4.4 m up to 15 m")]
    [InlineData("hull", "length", "length = \"99999 m\"", "4:10: hull.length: \"99999 m\" is above 15 m")]
    [InlineData("hull.bow", "entry_fullness", "entry_fullness = 0.81", "13:18: hull.bow.entry_fullness: 0.81 is above 0.8; give 0.55 to 0.8")]
    [InlineData("hull.midship", "deadrise", "deadrise = \"36 deg\"", "32:12: hull.midship.deadrise: \"36 deg\" is above 35 deg")]
    // contradictions
    [InlineData("hull", "beam", "beam = \"2.9 m\"", "5:8: hull.beam: \"2.9 m\" makes the hull less than 2.5 times as long as broad, which is no slim hull; give at most 2.08 m")]
    [InlineData("hull", "beam", "beam = \"150 mm\"", "5:8: hull.beam: \"150 mm\" makes the hull more than 30 times as long as broad, too slim to carry anybody; give at least 173.4 mm (the length / 30), or a shorter hull")]
    [InlineData("hull", "draft", "draft = \"360 mm\"", "7:9: hull.draft: \"360 mm\" reaches the sheer: it is not below the depth; give less than 360 mm")]
    [InlineData("hull", "draft", "draft = \"15 in\"", "7:9: hull.draft: \"15 in\" reaches the sheer: it is not below the depth; give less than 14 5/32 in (the depth)")]
    [InlineData("hull.bow", "sheer", "sheer = \"100 mm\"", "16:9: hull.bow.sheer: \"100 mm\" is under water: it is not above the draft; give more than 115 mm")]
    [InlineData("hull.bow", "rocker", "rocker = \"173 mm\"", "15:10: hull.bow.rocker: \"173 mm\" lifts the keel at the bow more than half the draft clear of the water; give at most 172.5 mm (1.5 times the draft)")]
    [InlineData("hull.stern", "rocker", "rocker = \"200 mm\"", "25:10: hull.stern.rocker: \"200 mm\" lifts the keel at the stern more than half the draft clear of the water")]
    [InlineData("hull.bow", "forefoot", "forefoot = \"4.99 m\"", "17:12: hull.bow.forefoot: \"4.99 m\" reaches over more than 40 % of the length; give at most 2.08 m (0.4 of the length)")]
    [InlineData("hull.bow", "forefoot", "forefoot = \"2.5 m\"", "17:12: hull.bow.forefoot: \"2.5 m\" reaches over more than 40 % of the length; give at most 2.08 m")]
    [InlineData("hull.bow", "entry_fullness", "entry_fullness = 0.54", "13:18: hull.bow.entry_fullness: 0.54 is below 0.55, which only hollow lines reach; give at least 0.55, or hollow = true")]
    [InlineData("build", "joints", "joints = [\"1.30 m\", \"5.20 m\"]", "43:21: build.joints: \"5.20 m\" is not between the ends of the hull; give less than 5.2 m (the length)")]
    [InlineData("build", "joints", "joints = [\"1.30 m\", \"1300 mm\"]", "43:21: build.joints: has \"1300 mm\" beside \"1.30 m\"; give at least 1 mm between places")]
    [InlineData("build", "joints", "joints = [\"1.30 m\", 3.9]", "43:21: build.joints: 3.9 has no unit")]
    [InlineData("build", "mold_at", "mold_at = []", "44:11: build.mold_at: [] names no station")]
    [InlineData("build", "mold_spacing", "mold_spacing = \"51 mm\"", "39:16: build.mold_spacing: \"51 mm\" makes more than 100 molds; give at least 52 mm")]
    [InlineData("build", "strongback_top", "strongback_top = \"579 mm\"", "45:18: build.strongback_top: \"579 mm\" is not 60 mm clear of the highest sheer, past which the molds run on and need a foot; give at least 580 mm")]
    // syntax
    [InlineData("hull", "length", "length = 5.20 m", "4:10: hull.length: has a unit outside quotes; write length = \"5.20 m\"")]
    [InlineData("hull", "length", "length = 5.20 m # over all", "4:10: hull.length: has a unit outside quotes; write length = \"5.20 m\"")]
    [InlineData("hull", "length", "length = \"17' 6\"\" # over all", "4:10: hull.length: has quotes within its quotes; write length = \"17 ft 6 in\"")]
    [InlineData("hull", "length", "length = '17' 6\"'", "4:10: hull.length: has quotes within its quotes; write length = \"17 ft 6 in\"")]
    [InlineData("hull", "length", "length = “5.20 m”", "4:10: hull.length: has curled quotes; write length = \"5.20 m\" with straight ones")]
    [InlineData("hull", "length", "length = \uFF025.20 m\uFF02", "4:10: hull.length: has curled quotes; write length = \"5.20 m\" with straight ones")]
    [InlineData("hull", "length", "length\u00A0= \"5.20 m\"", "4:7: hull.length: has a character that cannot be seen (U+00A0); delete it, and type a blank where one is wanted")]
    [InlineData("hull", "length", "\u200Blength = \"5.20 m\"", "4:1: hull.length: has a character that cannot be seen (U+200B); delete it")]
    [InlineData("hull", "length", "length: \"5.20 m\"", "4:7: hull.length: has a colon where its = should be; write length = \"5.20 m\"")]
    [InlineData("hull", "length", "length \"5.20 m\"", "4:1: hull.length: has no = before its value; write length = \"5.20 m\"")]
    [InlineData("hull", "length", "length == \"5.20 m\"", "4:9: hull.length: has two = signs; write length = \"5.20 m\"")]
    [InlineData("hull", "length", "length = \"5.20 m\";", "4:18: hull.length: ends with a semicolon; leave it out")]
    [InlineData("hull", "length", "length = \"5.20 m\" // over all", "4:19: hull.length: has a comment that does not begin with #; write # before it")]
    [InlineData("hull", "length", "length = \"5.20 m\", draft = \"1 m\"", "4:18: hull.length: goes on after its value with , draft = \"1 m\"; write every key on a line of its own, and comments after #")]
    [InlineData("hull", "widest", "widest = 0,50", "8:10: hull.widest: has a comma in 0,50; the decimal mark is a point, so write widest = 0.50")]
    [InlineData("hull", "widest", "widest = .5", "8:10: hull.widest: is written .5; a number has figures before its point and after it, so write widest = 0.5")]
    [InlineData("hull", "widest", "widest = 50 %", "8:10: hull.widest: is in per cent; write widest = 0.5")]
    [InlineData("hull", "beam", "beam = \"740 mm", "5:8: hull.beam: has quotes that are not closed on its line; close them, like beam = \"740 mm\"")]
    [InlineData("hull", "beam", "beam =", "5:1: hull.beam: has no value; write one after the =")]
    [InlineData("hull", "beam", "beam = # wide", "5:1: hull.beam: has no value; write one after the =")]
    [InlineData("hull", "beam", "beam", "5:1: hull.beam: has neither = nor value; write beam = and its value")]
    [InlineData("hull", "hollow", "hollow = no", "10:10: hull.hollow: has no where false is meant; write hollow = false")]
    [InlineData("", "title", "title = Gauge Tender", "1:9: title: has text without quotes; write title = \"Gauge Tender\"")]
    [InlineData("", "title", "title = \"C:\\Gauge\"", "1:9: title: has a backslash, which begins a special character between double quotes; write it between single ones: title = 'C:\\Gauge'")]
    [InlineData("", "title", "title = \"\\\"#-x", "1:9: title: has quotes that are not closed on its line")]
    [InlineData("hull", "length", "length = \u0085# over all", "4:1: hull.length: has no value")]
    [InlineData("hull.bow", "entry_fullness", "entry fullness = 0.62", "13:1: hull.bow.entry fullness: is a name with a blank in it; write entry_fullness = 0.62")]
    [InlineData("build", "joints", "joints = [\"1.30 m\", \"3.90 m\"", "43:10: build.joints: has no closing bracket; close the list")]
    [InlineData("build", "joints", "joints = [\"1.30 m\" \"3.90 m\"]", "43:10: build.joints: is not a list; write members in quotes with commas between")]
    [InlineData("build", "joints", "joints = [\n  \"1.30 m\", # one\n  \"3.90 m\"\n", "43:10: build.joints: has no closing bracket; close the list")]
    [InlineData("build", "strongback_top", "joints = [\n  \"1.30 m\",\n  \"3.90 m\"", "45:10: build.joints: has no closing bracket; close the list")]
    [InlineData("hull", "widest", "// wide", "8:1: file: has a comment that does not begin with #; write # before it")]
    // the deck
    [InlineData("hull", "widest", "crown = \"-5 mm\"", "8:9: hull.crown: \"-5 mm\" is below 0 mm; give 0 mm to 185 mm")]
    [InlineData("hull", "widest", "crown = \"190 mm\"", "8:9: hull.crown: \"190 mm\" is more than a quarter of the beam; give at most 185 mm (the beam / 4)")]
    [InlineData("hull", "widest", "crown = 40", "8:9: hull.crown: 40 has no unit; write \"40 mm\"")]
    [InlineData("hull", "widest", "camber = \"40 mm\"", "8:1: hull.camber: is not a key of a design file; did you mean crown?")]
    public void One_fault_is_told_once_at_its_place_with_what_would_be_right(string table, string key, string line, string expected)
    {
        var text = SampleDesigns.With(table, key, line);

        var fault = Assert.Single(DesignFile.Read(text, "a.toml").Diagnostics);

        Assert.StartsWith("a.toml:", fault.Headline, StringComparison.Ordinal);
        Assert.Contains(expected, fault.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("immersion", "immersion = \"-4 in\"", "15:13: hull.stern.immersion: \"-4 in\" lifts the foot of the transom more than half the draft clear of the water")]
    [InlineData("immersion", "immersion = \"6 in\"", "15:13: hull.stern.immersion: \"6 in\" puts the foot of the transom below the keel; give at most 5 1/2 in (the draft)")]
    [InlineData("immersion", "immersion = \"1 in\"\nrocker = \"2 in\"", "15:13: hull.stern.immersion: stands in place of rocker, which is given too; keep one of the two")]
    [InlineData("immersion", "", "12:2: hull.stern.rocker: is missing; add a line like rocker = \"40 mm\", or immersion in its place")]
    [InlineData("breadth", "breadth = \"44 in\"", "18:11: hull.stern.breadth: \"44 in\" is more than the beam; give at most 43 5/16 in")]
    [InlineData("rake", "", "12:2: hull.stern.rake: is missing; add a line like rake = \"12 deg\"")]
    [InlineData("rake", "rake = \"14 deg\"\nheel = \"8 in\"", "18:8: hull.stern.heel: belongs to a pointed stern, and this one is a transom stern: where a transom meets the keel follows from its rake, breadth and foot; leave it out")]
    [InlineData("rake", "rake = \"14 deg\"\nvee = \"8 deg\"", "18:7: hull.stern.vee: belongs to a pointed stern, and this one is a transom stern; leave it out")]
    [InlineData("rake", "rake = \"14 deg\"\nrun_angle = \"8 deg\"", "18:13: hull.stern.run_angle: belongs to a pointed stern")]
    public void A_transom_has_its_own_keys(string key, string line, string expected)
    {
        var text = SampleDesigns.Replace(SampleDesigns.Transom, "hull.stern", key, line);

        var fault = Assert.Single(DesignFile.Read(text, "a.toml").Diagnostics);

        Assert.Contains(expected, fault.Headline, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("(hull.bow)")]
    [InlineData("hull.bow:")]
    [InlineData("{hull.bow}")]
    [InlineData("hull.bow")]
    public void A_head_without_its_brackets_is_told_and_its_keys_are_not(string head)
    {
        var text = SampleDesigns.Pointed.Replace("[hull.bow]", head, StringComparison.Ordinal);

        var fault = Assert.Single(DesignFile.Read(text, "a.toml").Diagnostics);

        Assert.Equal("a.toml:12:1: hull.bow: has no square brackets around a table's name; write [hull.bow] alone on its line", fault.Headline);
    }

    [Theory]
    [InlineData("beam = \"740 mm", 9)]
    [InlineData("beam = \"740 mm\"", 9)]
    [InlineData("beem = \"740 mm", 1)]
    public void A_broken_line_hides_no_key_that_is_missing_unless_it_may_be_meant_for_any(string line, int faults)
    {
        var told = DesignFile.Read($"title = \"T\"\n[hull]\nlength = \"5.2 m\"\n{line}\n[hull.bow]\nrocker = \"50 mm\"\n", "a.toml").Diagnostics;
        Assert.Equal(line.EndsWith("mm\"", StringComparison.Ordinal) ? faults - 1 : faults, told.Count);
        Assert.Equal(faults > 1, told.Any(d => d.Key == "hull.midship" && d.Problem == "is missing"));
        Assert.DoesNotContain(told, d => d.Key == "hull.beam" && d.Problem == "is missing");
    }

    [Fact]
    public void Keys_written_before_their_table_are_told_where_they_belong_and_not_as_missing()
    {
        var text = SampleDesigns.Pointed.Replace("[hull]\n", "", StringComparison.Ordinal);

        var faults = DesignFile.Read(text, "a.toml").Diagnostics;

        Assert.Equal(["length", "beam", "depth", "draft", "widest", "keel_low", "hollow"], faults.Select(f => f.Key), StringComparer.Ordinal);
        Assert.All(faults, f => Assert.Equal("it belongs in [hull]", f.Remedy));
    }

    [Fact]
    public void All_faults_of_a_file_are_told_in_one_run_in_the_order_of_their_places()
    {
        const string text = """
            title = Gauge Tender
            [hull
            length = "5.20 m
            beam = 740
            depth = 0,36
            lenght = "5 m"
            [hull.bow]
            entry_fullness = 0.9
            [[outrigger]]
            side = "bath"
            [[outrigger]]
            side = "port"
            [outrigger.hull]
            length = "2 m"
            [hull.sterm]
            kind = "pointed"
            """;

        var faults = DesignFile.Read(text, "a.toml").Diagnostics;

        Assert.Equal(
            [
                "1 title", "2 hull", "3 hull.length", "4 hull.beam", "5 hull.depth", "6 hull.lenght", "8 hull.bow.entry_fullness", "10 outrigger.side", "15 hull.sterm",
            ],
            faults.Select(f => Invariant($"{f.Place.Line} {f.Key}")),
            StringComparer.Ordinal);
        Assert.True(faults.Zip(faults.Skip(1)).All(p => p.First.Place <= p.Second.Place));
        Assert.All(faults, f => Assert.NotEmpty(f.Remedy));
    }

    [Fact]
    public void Every_fault_of_a_list_of_places_is_told_at_once()
    {
        var text = SampleDesigns.With("build", "mold_at", "mold_at = [\"0.9 m\", nan, \"9 m\", \"1.8\", \"2.6 m\", \"2609 mm\", \"-1 m\", \"6 m\", \"900 mm\", \"16 m\"]");

        Assert.Equal(
            [
                "44:21: build.mold_at: nan is not a number anybody can build to; give 1 mm to 15 m",
                "44:26: build.mold_at: \"9 m\" is not between the ends of the hull; give less than 5.2 m (the length)",
                "44:33: build.mold_at: \"1.8\" has no unit; write \"1.8 mm\" or \"1.8 cm\" or \"1.8 m\" or \"1.8 in\" or \"1.8 ft\", whichever is meant",
                "44:49: build.mold_at: has \"2609 mm\" beside \"2.6 m\", which leaves no room for the stock; give at least 15 mm (the mold stock) between places",
                "44:60: build.mold_at: \"-1 m\" is below 1 mm; give 1 mm to less than 5.2 m",
                "44:68: build.mold_at: \"6 m\" is not between the ends of the hull; give less than 5.2 m (the length)",
                "44:75: build.mold_at: has \"900 mm\" beside \"0.9 m\", which leaves no room for the stock; give at least 15 mm (the mold stock) between places",
                "44:85: build.mold_at: \"16 m\" is above 15 m; give 1 mm to less than 5.2 m",
            ],
            DesignFile.Read(text, "a.toml").Diagnostics.Select(f => f.Headline["a.toml:".Length..]),
            StringComparer.Ordinal);
    }

    [Fact]
    public void A_missing_table_is_told_once_with_the_keys_it_needs()
    {
        var faults = DesignFile.Read("title = \"T\"\n[hull]\nlength = \"5 m\"\nbeam = \"70 cm\"\ndepth = \"30 cm\"\ndraft = \"11 cm\"\n", "a.toml").Diagnostics;

        Assert.Equal(
            [
                "a.toml:1:1: build: is missing; add [build] with planking",
                "a.toml:2:2: hull.bow: is missing; add [hull.bow] with entry_fullness, rocker, sheer, forefoot",
                "a.toml:2:2: hull.stern: is missing; add [hull.stern] with kind, run_fullness, rocker, sheer",
                "a.toml:2:2: hull.midship: is missing; add [hull.midship] with deadrise, fullness, flare",
            ],
            faults.Select(f => f.Headline),
            StringComparer.Ordinal);
    }

    [Theory]
    [InlineData("[hull]\n[hull]\n", "2:2: hull: is a table already at line 1")]
    [InlineData("[hull]\nbow = 3\n[hull.bow]\n", "3:2: hull.bow: is a table here and a value at line 2")]
    [InlineData("[[hull]]\n", "1:3: hull: is in double brackets; write [hull]: a vessel has one")]
    [InlineData("hull = 5\n", "1:8: hull: 5 is a value here; it is a table: write [hull] and its keys below")]
    [InlineData("[hull.length]\n", "1:2: hull.length: is a table here; it is a key with a value, like length = \"5.20 m\"")]
    [InlineData("[bow]\nrocker = 3\n", "1:2: bow: is not a table of a design file; did you mean [hull.bow]?")]
    [InlineData("[sails]\n", "1:2: sails: is not a table of a design file; the tables are hull, hull.bow, hull.stern, hull.midship, build")]
    public void Tables_used_wrongly_are_told(string text, string expected)
    {
        Assert.Contains(DesignFile.Read(text, "a.toml").Diagnostics, f => f.Headline.Contains(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void A_fault_shows_its_line_and_a_caret_under_the_value()
    {
        var text = SampleDesigns.With("hull", "beam", "\tbeam = 740 # wide").Replace("\n", "\r\n", StringComparison.Ordinal);

        Diagnostic fault = Assert.Single(DesignFile.Read(text, "a.toml").Diagnostics);

        Assert.Equal(" 5 | \tbeam = 740 # wide\n   | \t       ^^^", fault.Excerpt);
    }
}
