using System.CommandLine;
using System.Text;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Templates;
using Lines.Cli.Terminal;
using Lines.Design;
using Lines.Design.Schema;
using Lines.Design.Studies;

namespace Lines.Cli.Verbs;

/// <summary><c>lines new FILE --from TEMPLATE</c>: starts a design from one there is, stretched to other dimensions.</summary>
internal static class NewVerb
{
    private const string First = "gauge-runner";

    public static Command Make()
    {
        var file = new Argument<string>("FILE") { Description = "the design file to write, made with any folders on the way to it" };
        var from = new Option<string>("--from")
        {
            Description = $"the template: {string.Join(", ", Template.Names)}",
            HelpName = "TEMPLATE",
            DefaultValueFactory = _ => First,
        };
        from.CompletionSources.Add([.. Template.Names]);
        var title = new Option<string?>("--title") { Description = "its name, printed on every sheet", HelpName = "TEXT" };
        var length = Dimension("--length", "length; everything along the hull follows in proportion");
        var beam = Dimension("--beam", "greatest breadth; everything across follows");
        var depth = Dimension("--depth", "base line to sheer amidships; every height follows, the draft too");
        var draft = Dimension("--draft", "base line to the design waterline; nothing follows");
        var (units, force) = (Common.Units("notation of every length in the file: mm, in, ft-in, ft-in-8ths (left out: as given, and as in the template)"), Common.Force());
        var verb = new Command("new", "Starts a design from a template, stretched to the dimensions given.") { file, from, title, length, beam, depth, draft, units, force };
        verb.SetAction(parsed => Write(
            parsed.GetValue(file)!,
            parsed.GetValue(from)!,
            new StretchWish
            {
                Title = parsed.GetValue(title),
                Length = parsed.GetValue(length),
                Beam = parsed.GetValue(beam),
                Depth = parsed.GetValue(depth),
                Draft = parsed.GetValue(draft),
                Notation = parsed.GetValue(units),
                Header =
                [
                    $"Started from the template {parsed.GetValue(from)}. Change what you like, then: lines check FILE",
                    "Lengths and angles stand in quotes with their unit; what follows a # is a remark.",
                ],
            },
            parsed.GetValue(force)));
        return verb.WithExamples(
            $"lines new tender.toml --from {First}",
            "lines new tender.toml --from silt-sampler --length \"4.20 m\" --beam \"1.10 m\" --title \"Mud Tender\"",
            $"lines new tender.toml --from {First} --length \"18 ft\" --beam \"29 1/8 in\" --units in");
    }

    private static int Write(string path, string from, StretchWish wish, bool force)
    {
        var template = Template.Text(from) ?? throw new CommandFailure(ExitCode.Wrong, NoSuch(from));
        OutputFile.Check(path, force);
        var text = Stretching.Stretch(template, wish);
        var reading = DesignFile.Read(text, path);
        if (reading.Design is not { } design)
            throw StretchFaults.Refused(reading.Diagnostics, wish);
        OutputFile.Write(path, Encoding.UTF8.GetBytes(text), force);
        Judge(design, path);
        Streams.Error.WriteLine($"wrote {path} from {from}; open it in an editor, then: lines check {path}");
        return ExitCode.Done;
    }

    /// <summary>Says whether the hulls of a design just written can be shaped and are fair, and what to ease where not.</summary>
    private static void Judge(VesselDesign design, string path)
    {
        if (Shaped.TryOf(design, out var conflicts) is { } shaped)
        {
            Streams.Error.WriteLine(shaped.Fairness.Verdict);
            foreach (var (name, report) in shaped.OutriggersJudged.Where(o => !o.Report.Fair))
                Streams.Error.WriteLine($"{name}: {report.Verdict}");
            return;
        }

        Streams.Error.WriteLine("These dimensions do not go together yet: no fair hull has them all. Ease one in the file:");
        DesignInput.Show(conflicts);
    }

    private static string NoSuch(string name)
    {
        var near = NearestName.Of(name, Template.Names);
        return near is null
            ? $"there is no template \"{name}\"; the templates are {string.Join(", ", Template.Names)}"
            : $"there is no template \"{name}\"; did you mean {near}?";
    }

    private static Option<string?> Dimension(string name, string description) => new(name)
    {
        Description = description,
        HelpName = "LENGTH",
    };
}
