using Lines.Construction.Molds;
using Lines.Design;
using Lines.Design.Studies;
using Lines.Hull.Form;
using Lines.Kernel.Units;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Construction.Molds;

public class MoldPlanProperties
{
    private static readonly string[] s_lengths = ["3.90 m", "4.20 m", "4.50 m", "4.90 m", "5.10 m", "5.60 m", "5.85 m", "6.00 m", "6.45 m"];

    public static TheoryData<string> Templates => ShapedTemplates.All;

    [Theory]
    [MemberData(nameof(Templates))]
    public void Templates_of_every_length_have_both_ends_and_every_mold_asked_for(string name)
    {
        foreach (var length in s_lengths)
            AssertWhole(name, new StretchWish { Length = length });
    }

    // The examples under `lines new --help`.
    [Theory]
    [InlineData("gauge-runner", null, null, null)]
    [InlineData("silt-sampler", "4.20 m", "1.10 m", null)]
    [InlineData("gauge-runner", "18 ft", "29 1/8 in", LengthNotation.Inches)]
    public void The_examples_of_the_help_have_both_ends_and_every_mold_asked_for(string name, string? length, string? beam, LengthNotation? notation) =>
        AssertWhole(name, new StretchWish { Length = length, Beam = beam, Notation = notation });

    private static void AssertWhole(string name, StretchWish wish)
    {
        var text = Stretching.Stretch(File.ReadAllText(Repository.PathOf("templates", name + ".toml")), wish);
        var design = DesignFile.Read(text, name + ".toml").Design!;
        var plan = MoldPlan.Of(HullShape.Solve(design.Vessel.MainHull).Surface!, design.Build);
        Assert.True(plan.LeftOut.All(l => !l.IsLoss), $"{wish.Length}: {string.Join("; ", plan.LeftOut.Select(l => l.Sentence(LengthNotation.Millimeters)))}");
        Assert.Equal(MoldKind.Stem, plan.Molds[0].Kind);
        Assert.True(plan.Molds[^1].Kind is MoldKind.Stern or MoldKind.Transom, wish.Length);
    }
}
