using Lines.Design;
using Lines.Design.Schema;
using Lines.Hull.Form;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Design;

public sealed class SchemaTests
{
    [Fact]
    public void Every_dial_of_the_hull_has_one_key()
    {
        Assert.Equal(Enum.GetValues<Dial>().Order(), DesignSchema.ByDial.Keys.Order());
        Assert.All(DesignSchema.ByDial, p => Assert.Equal(p.Key, p.Value.Dial));
    }

    [Fact]
    public void Every_key_stands_in_a_table_and_is_explained()
    {
        Assert.All(DesignSchema.Keys, k => Assert.Contains(DesignSchema.Tables, t => t.Path.Equals(k.Table, StringComparison.Ordinal)));
        Assert.All(DesignSchema.Keys, k => Assert.EndsWith(".", k.Doc, StringComparison.Ordinal));
        Assert.All(DesignSchema.Keys, k => Assert.True(k.Required == (k.Default is null), k.Path));
        Assert.All(DesignSchema.Keys.Where(k => k.Slider is not null), k => Assert.True(k.Least <= k.Slider!.Value.Low && k.Slider.Value.High <= k.Greatest, k.Path));
    }

    [Fact]
    public void The_examples_of_the_keys_make_a_sound_design_of_either_stern()
    {
        foreach (var stern in (string[])[DesignSchema.Pointed, DesignSchema.Transom])
        {
            var lines = DesignSchema.Tables.SelectMany(t => DesignSchema.Keys
                .Where(k => k.Table.Equals(t.Path, StringComparison.Ordinal) && (k.Stern ?? stern).Equals(stern, StringComparison.Ordinal))
                .Where(k => k.Name is not ("immersion" or "water") && k is not { Target: not null, Dial: null })
                .Select(k => $"{k.Name} = {(k.Name is "kind" ? $"\"{stern}\"" : k.Example)}")
                .Prepend(t.Path.Length == 0 ? "" : $"[{t.Path}]"));

            Assert.Empty(DesignFile.Read(string.Join('\n', lines), "examples.toml").Diagnostics.Select(d => d.ToString()));
        }
    }

    [Fact]
    public void The_examples_of_the_tables_in_double_brackets_make_a_sound_design()
    {
        var text = new System.Text.StringBuilder(SampleDesigns.Pointed);
        foreach (var form in DesignSchema.Repeated)
        {
            Assert.All(form.Keys, k => Assert.Contains(form.Tables, t => t.Path.Equals(k.Table, StringComparison.Ordinal)));
            Assert.All(form.Keys, k => Assert.EndsWith(".", k.Doc, StringComparison.Ordinal));
            Assert.All(form.Keys, k => Assert.True(k.Required == (k.Default is null), k.Path));
            foreach (var table in form.Tables)
            {
                text.Append(form.Head(table.Path)).Append('\n');
                foreach (var key in form.Keys.Where(k => k.Table.Equals(table.Path, StringComparison.Ordinal) && k.Stern is not DesignSchema.Transom && k.Name is not "water" && k is not { Target: not null, Dial: null }))
                    text.Append(key.Name).Append(" = ").Append(key.Example).Append('\n');
            }
        }

        Assert.Empty(DesignFile.Read(text.ToString(), "examples.toml").Diagnostics.Select(d => d.ToString()));
    }

    [Theory]
    [InlineData("lenght", "length")]
    [InlineData("Beam", "beam")]
    [InlineData("entry-fullness", "entry_fullness")]
    [InlineData("entryfulness", "entry_fullness")]
    [InlineData("topsail", null)]
    [InlineData("", null)]
    public void The_nearest_name_is_found_where_one_is_near(string name, string? expected)
    {
        Assert.Equal(expected, NearestName.Of(name, DesignSchema.Keys.Select(k => k.Name)));
    }

    [Fact]
    public void Dials_that_exclude_each_other_are_told_at_each_place_in_the_notation_of_the_file()
    {
        var text = SampleDesigns.With("hull.bow", "entry_angle", "").Replace("beam = \"740 mm\"", "beam = \"2-5-1\"", StringComparison.Ordinal);
        var source = DesignFile.Read(text, "a.toml").Design!.Source;

        var faults = source.Explain(
        [
            new DialConflict(
                "no convex section is as full",
                [
                    Told(Dial.MidshipFullness, 0.74321, upward: false) with { Fair = false },
                    new DialHint(Dial.Deadrise, null),
                    Told(Dial.Beam, 0.7, upward: false),
                    Told(Dial.EntryAngle, 14.13 * Math.PI / 180, upward: true),
                ]),
        ]);

        Assert.Equal(
            [
                // 0.7 m is 27.559 in: the next sixteenth away from 29 1/8 in is 27 1/2 in.
                "a.toml:5:8: hull.beam: \"2-5-1\": no convex section is as full; nearest feasible 2-3-4, the others kept",
                "a.toml:12:2: hull.bow.entry_angle: does not go with hull.beam (line 5), as said there; nearest feasible 14.2 deg, the others kept",
                "a.toml:32:12: hull.midship.deadrise: \"6 deg\": does not go with hull.beam (line 5), as said there; no other value of it alone was found to do",
                "a.toml:33:12: hull.midship.fullness: 0.80: does not go with hull.beam (line 5), as said there; nearest feasible 0.743 (some line is then not yet fair), the others kept",
            ],
            faults.Select(f => f.Headline),
            StringComparer.Ordinal);
        Assert.Equal("   |        ^^^^^^^", faults[0].Excerpt.Split('\n')[1]);

        DialHint Told(Dial dial, double value, bool upward) => new(dial, source.AsTold(dial, value, upward)) { Fair = true };
    }
}
