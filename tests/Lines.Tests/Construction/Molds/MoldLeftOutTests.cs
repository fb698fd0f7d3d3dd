using Lines.Construction.Molds;
using Lines.Design;
using Lines.Design.Diagnostics;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Molds;

public class MoldLeftOutTests
{
    private static readonly MoldLeftOut Stern = new(5.2, $"its edge cannot be drawn near x = {new Length(5.08)}") { End = MoldKind.Stern, Key = "planking", Remedy = $"take thinner planking" };

    private static readonly MoldLeftOut Near = new(5.1, $"the stern mold's edge at the sheer lies beyond it")
    {
        InRoomOf = MoldKind.Stern,
        Key = "mold_spacing",
        Remedy = $"nothing to do: the end carries the planking there",
    };

    [Fact]
    public void A_missing_end_is_named_with_its_reason_in_the_builders_notation()
    {
        Assert.True(Stern.IsLoss);
        Assert.Equal("STERN", Stern.Part(LengthNotation.Inches));
        // 5.08 m are 200 in exactly.
        Assert.Equal("The stern mold is not made: its edge cannot be drawn near x = 200 in.", Stern.Sentence(LengthNotation.Inches));
        Assert.Equal("The transom pattern is not made: too thick.", (new MoldLeftOut(5, $"too thick") { End = MoldKind.Transom, Key = "planking", Remedy = $"" }).Sentence(LengthNotation.Inches));
        Assert.Equal("mold at x = 1' 0\"", (new MoldLeftOut(0.3048, $"") { Key = "mold_at", Remedy = $"" }).Part(LengthNotation.FeetInches));
    }

    [Fact]
    public void A_station_in_the_room_of_an_end_is_no_loss_and_does_not_count_on_an_end_that_is_missing()
    {
        Assert.False(Near.IsLoss);
        Assert.Equal("the stern mold, once it is made, carries the planking there", Near.WithoutItsEnd().Advice(LengthNotation.Millimeters));
    }

    [Fact]
    public void What_is_missing_is_a_warning_and_what_needs_nothing_a_note()
    {
        var design = DesignFile.Read(SampleDesigns.Pointed, "mine.toml").Design!;
        var told = design.Source.ExplainLeftOut(ShapedTemplates.Of("gauge-runner").Molds with { LeftOut = [Near, Stern] });
        Assert.Equal([Severity.Warning, Severity.Note], told.OrderBy(d => d.Severity).Select(d => d.Severity));
        Assert.Contains(told, d => d.Headline.Contains(": warning: build.planking: the stern mold is not made: its edge", StringComparison.Ordinal));
        Assert.Contains(told, d => d.Headline.Contains(": note: build.mold_spacing: no mold at x = 5100 mm: ", StringComparison.Ordinal));
        Assert.Equal(told.OrderBy(d => d.Place), told);
    }

    [Fact]
    public void An_inner_stem_whose_edge_is_not_drawn_is_a_note_at_its_siding()
    {
        var shaped = ShapedTemplates.Of("gauge-runner");
        var plan = shaped.Molds with { LeftOut = [], Molds = [.. shaped.Molds.Molds.Select((m, k) => k == 0 ? m with { WhyNoApex = $"the tide was out" } : m)] };
        var note = Assert.Single(shaped.Design.Source.ExplainLeftOut(plan));
        Assert.Equal(("build.stem_siding", Severity.Note), (note.Key, note.Severity));
        Assert.Contains(plan.Molds[0].Name + ": no APEX is drawn", note.Problem, StringComparison.Ordinal);
    }
}
