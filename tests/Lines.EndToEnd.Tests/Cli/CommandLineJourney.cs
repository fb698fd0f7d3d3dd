using Lines.EndToEnd.Tests.Support;
using Xunit;

namespace Lines.EndToEnd.Tests.Cli;

public sealed class CommandLineJourney
{
    [Theory]
    [InlineData(2, "there is no command \"chek\"; did you mean check?", "chek", "a.toml")]
    [InlineData(2, "there is no command \"sail\"; the commands are new, check,", "sail")]
    [InlineData(2, "there is no command \"sail\"", "sail", "--help")]
    [InlineData(2, "check needs FILE", "check")]
    [InlineData(2, "there is no option --unit; did you mean --units?", "check", "a.toml", "--unit", "in")]
    [InlineData(2, "there is no option --wet here", "check", "a.toml", "--wet")]
    [InlineData(2, "--units needs a value", "check", "a.toml", "--units")]
    [InlineData(2, "--units does not know \"furlong\"; it takes mm, in, ft-in, ft-in-8ths", "check", "a.toml", "--units", "furlong")]
    [InlineData(2, "\"b.toml\" is one argument too many for check", "check", "a.toml", "b.toml")]
    [InlineData(2, "--units stands before the command; write it behind: lines check ... --units", "--units", "in", "check", "a.toml")]
    [InlineData(2, "\"\" is not the name of a file", "check", "")]
    [InlineData(2, "\"\" is not the name of a file", "new", "")]
    [InlineData(2, "\".pdf\" is not the name of a file", "draw", "a.toml", "-o", ".pdf")]
    [InlineData(2, "\"m\" is one argument too many for new; what has a blank in it goes in quotes", "new", "a.toml", "--length", "4", "m")]
    [InlineData(2, "--paper does not know \"a9\"; it takes letter, tabloid", "draw", "a.toml", "--paper", "a9")]
    [InlineData(2, "there is no template \"silt-sampeler\"; did you mean silt-sampler?", "new", "a.toml", "--from", "silt-sampeler")]
    [InlineData(2, "plan.gif: cannot be written as .gif; the ending says the format: .pdf, .svg, .dxf, .png", "draw", "a.toml", "-o", "plan.gif")]
    [InlineData(2, "plan: has no ending; the ending says the format: .pdf, .svg, .dxf, .png", "draw", "a.toml", "-o", "plan")]
    [InlineData(2, "hull.dwg: cannot be written as .dwg; the ending says the format: .step, .stp, .igs, .iges, .stl, .obj", "export", "a.toml", "-o", "hull.dwg")]
    [InlineData(2, "--format does not know \"gltf\"; it takes step, iges, stl, obj", "export", "a.toml", "--format", "step", "gltf")]
    [InlineData(2, "hull.stl: its ending says the format; leave out --format, or name a folder", "export", "a.toml", "-o", "hull.stl", "--format", "obj")]
    [InlineData(2, "--tolerance is for stl and obj; step and iges hold the surface itself", "export", "a.toml", "--format", "iges", "--tolerance", "1 mm")]
    [InlineData(2, "--tolerance \"0.1\" has no unit", "export", "a.toml", "--tolerance", "0.1")]
    [InlineData(2, "--tolerance takes 0.01 mm to 10 mm, not \"1 m\"", "export", "a.toml", "--tolerance", "1 m")]
    public void A_slip_on_the_command_line_is_told_with_what_was_meant_and_nothing_is_done(int code, string message, params string[] arguments)
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, arguments);

        Assert.Equal(code, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.StartsWith("lines: ", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Out);
        Assert.Empty(place.Entries());
    }

    [Fact]
    public void Nothing_at_all_shows_the_help_and_is_wrong()
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root);

        Assert.Equal(2, run.Code);
        Assert.Empty(run.Out);
        Assert.Contains("Commands:", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_verb_has_help_with_examples_that_name_it()
    {
        using var place = new Workplace();
        var help = Command.Run(place.Root, "--help");
        var commands = help.Out[help.Out.IndexOf("Commands:", StringComparison.Ordinal)..help.Out.IndexOf("Examples:", StringComparison.Ordinal)];
        var verbs = commands.Split('\n').Skip(1).Where(l => l.StartsWith("  ", StringComparison.Ordinal)).Select(l => l.Trim().Split(' ')[0]).ToList();

        Assert.Equal(0, help.Code);
        Assert.Contains("check", verbs, StringComparer.Ordinal);
        foreach (var verb in verbs)
        {
            var page = Command.Run(place.Root, verb, "--help");
            Assert.Equal(0, page.Code);
            Assert.Empty(page.Error);
            Assert.Contains("Examples:", page.Out, StringComparison.Ordinal);
            Assert.Contains($"lines {verb} ", page.Out[page.Out.IndexOf("Examples:", StringComparison.Ordinal)..], StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("help", "--help")]
    [InlineData("help check", "check --help")]
    public void Help_is_given_for_the_word_too(string asked, string page)
    {
        using var place = new Workplace();

        Assert.Equal(Command.Run(place.Root, page.Split(' ')), Command.Run(place.Root, asked.Split(' ')));
    }

    [Fact]
    public void The_version_is_a_plain_number()
    {
        using var place = new Workplace();

        var run = Command.Run(place.Root, "--version");

        Assert.Equal(0, run.Code);
        Assert.Matches(@"^\d+\.\d+\.\d+\n$", run.Out);
    }

    [Fact]
    public void Help_goes_without_color_where_nobody_looks()
    {
        using var place = new Workplace();

        Assert.DoesNotContain('\u001b', Command.Run(place.Root, "check", "none.toml").Error);
    }

    [Theory]
    [InlineData("lines che", "check")]
    [InlineData("lines new x.toml --from silt", "silt-sampler")]
    [InlineData("lines check x.toml --units ft-in-", "ft-in-8ths")]
    [InlineData("lines check x.toml --js", "--json")]
    public void The_script_for_bash_completes_verbs_options_and_values(string typed, string expected)
    {
        using var place = new Workplace();
        var words = string.Join(' ', typed.Split(' ').Select(w => $"'{w}'"));
        var script = $"""
            lines() {"{"} $LINES "$@"; {"}"}
            eval "$(lines completion bash)"
            COMP_LINE='{typed}' COMP_POINT={typed.Length.ToString(System.Globalization.CultureInfo.InvariantCulture)} COMP_WORDS=({words}) COMP_CWORD={(typed.Split(' ').Length - 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}
            _lines_complete
            printf '%s\n' "${"{"}COMPREPLY[@]{"}"}"
            """;

        var run = Command.Shell(place.Root, script);

        Assert.Equal(expected + "\n", run.Out);
        Assert.Empty(run.Error);
    }

    [Theory]
    [InlineData("bash", "complete -o default -F _lines_complete lines")]
    [InlineData("zsh", "compdef _lines_complete lines")]
    [InlineData("fish", "complete -c lines")]
    public void Three_shells_have_a_script(string shell, string expected)
    {
        using var place = new Workplace();

        Assert.Contains(expected, Command.Run(place.Root, "completion", shell).Out, StringComparison.Ordinal);
    }
}
