using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

/// <summary>Patterns on the paper at hand.</summary>
public sealed class PrintJourney
{
    [Fact]
    public void Patterns_are_printed_on_a_roll_or_as_halves_and_paper_that_does_not_exist_is_refused()
    {
        using var place = new Workplace();
        place.Write("mine.toml", Designs.Coarse());

        var roll = Command.Run(place.Root, "print", "mine.toml", "--paper", "36 in roll");
        Assert.Equal((0, ""), (roll.Code, roll.Out));
        Assert.StartsWith("wrote mine-templates-36-in-roll.pdf, ", roll.Error, StringComparison.Ordinal);
        Assert.True(File.Exists(place.PathOf("mine-templates-36-in-roll.pdf")));
        Assert.Equal(0, Command.Run(place.Root, "print", "mine.toml", "--half", "--guard", "1/8 in", "--border", "10 mm", "-o", "halves.pdf").Code);
        Assert.Equal(0, Command.Run(place.Root, "print", "mine.toml", "--paper", "24 in x 36 in", "-o", "large.pdf").Code);

        foreach (var (option, value, told) in ((string, string, string)[])
        [
            ("--paper", "36 roll", "--paper \"36 roll\": has no unit; write 36 mm, 36 cm, 36 m, 36 in or 36 ft, whichever is meant"),
            ("--paper", "4 in roll", "--paper takes rolls from 200 mm to 2440 mm wide, not \"4 in roll\""),
            ("--paper", "4 in x 6 in", "--paper takes sheets from 200 mm to 5000 mm a side, no more than 2.5 times as long as broad, not \"4 in x 6 in\""),
            ("--paper", "napkin", "--paper does not know \"napkin\"; it takes letter, tabloid, ansi-c, a4, a3, a2, a1, any sheet as \"24 in x 36 in\", a roll as \"36 in roll\""),
            ("--border", "20 mm", "--border takes 0 mm to 15 mm, not \"20 mm\""),
            ("--guard", "3", "--guard \"3\" has no unit"),
        ])
        {
            var refused = Command.Run(place.Root, "print", "mine.toml", option, value, "-o", "refused.pdf");
            Assert.Equal(2, refused.Code);
            Assert.Contains(told, refused.Error, StringComparison.Ordinal);
            Assert.False(File.Exists(place.PathOf("refused.pdf")));
        }
    }
}
