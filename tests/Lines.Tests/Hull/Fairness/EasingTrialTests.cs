using Lines.Design;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Sections;
using Lines.Plans.Figures;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Fairness;

public class EasingTrialTests
{
    [Fact]
    public void A_value_told_as_fair_lies_on_the_side_told_and_its_hull_is_fair()
    {
        // Widest amidships, none of the dials helps alone.
        var text = new EditedDesign(File.ReadAllText(Repository.PathOf("templates", "gauge-runner.toml"))).With("hull.widest", "0.54")
            .With([("hull.bow.rocker", "\"80 mm\""), ("hull.bow.sheer", "\"1.2 m\""), ("hull.bow.forefoot", "\"1.2 m\""), ("hull.bow.entry_fullness", "0.55")]).Text;
        var design = DesignFile.Read(text, "x.toml").Design!;
        var dials = design.Vessel.MainHull;
        var report = FairnessReport.Of(HullLines.Of(HullShape.Solve(dials).Surface!));
        Assert.False(report.Fair);

        var trial = Assert.Single(EasingTrial.Of(report, dials, design.Source.AsTold, design.Source.Shown));

        Assert.Equal((Dial.BowRocker, 1), (trial.Dial, trial.Toward));
        Assert.True(trial.Fair > dials.Bow.Rocker);
        Assert.True(FairnessReport.Of(HullLines.Of(HullShape.Solve(DialAccess.With(dials, trial.Dial, trial.Fair!.Value)).Surface!)).Fair);
        Assert.Contains($"; raise hull.bow.rocker to {trial.Shown}, with which the hull is fair\n", FairnessText.Of(report with { Trials = [trial] }), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "; change hull.bow.rocker, but not alone: a step of it either way brings the worst line no nearer\n")]
    [InlineData(-1, "; lower hull.bow.rocker\n")]
    public void A_dial_that_no_step_of_makes_fair_is_told_without_a_value(int toward, string told)
    {
        var fair = FairnessReport.Of(ShapedTemplates.Of("gauge-runner").Lines);
        var bad = fair.Lines[^1] with { Batten = fair.Lines[^1].Batten with { Depth = 0.0012 }, Ease = Dial.BowRocker };
        var report = fair with { Lines = [bad], Fair = false, Trials = [new EasingTrial(Dial.BowRocker, toward, null, "")] };
        Assert.Contains(told, FairnessText.Of(report), StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_fair_hull_nothing_is_tried()
    {
        var shaped = ShapedTemplates.Of("gauge-runner");
        Assert.Empty(EasingTrial.Of(FairnessReport.Of(shaped.Lines), shaped.Hull.Dials, shaped.Design.Source.AsTold, shaped.Design.Source.Shown));
    }
}
