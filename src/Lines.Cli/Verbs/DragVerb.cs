using System.CommandLine;
using System.Globalization;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Propulsion;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
using Lines.Plans.Paper;
using Lines.Plans.Report;
using Lines.Plans.Resistance;

namespace Lines.Cli.Verbs;

/// <summary><c>lines drag FILE</c>: an estimate of what moves the boat, against speed.</summary>
internal static class DragVerb
{
    /// <summary>Speeds that can be asked for [kn], and how many.</summary>
    private const double Slowest = 0.5, Fastest = 40;
    private const int Most = 200;

    public static Command Make()
    {
        var (file, json, units, force) = (Common.File(), Common.Json(), Common.Units(), Common.Force());
        var output = Common.OutputTo("the file to write to; its ending says the format: .csv (the table), .pdf, .svg (the chart) (left out: prints all)");
        var paper = PaperOption.Of("paper of a PDF", PaperSize.Letter);
        var (speeds, water, crew, drive) = (Speeds(Invariant($"speeds in knots, separated by commas (left out: every half knot to a Froude number of {UsualSpeeds.MostFroude})")), Common.Water("the water"), Crew(), DriveOption());
        var load = new Option<string?>("--load") { Description = "the load case whose level and trim she lies at, as float names it (left out: level at the design waterline)", HelpName = "CASE" };
        var power = Common.Number("--power", "WATTS", "what each of the crew gives, to be told the speed", 1, 2000);
        var hours = Common.Number("--hours", "HOURS", "for how long, to be told power and speed, a sixth of an hour to eight", 1.0 / 6, 8);
        var wind = Common.Number("--wind", "KNOTS", "wind from ahead in knots, for the air on topsides and crew; from astern it is negative, as --wind=-8 (left out: none)", -40, 60);
        var verb = new Command("drag", "Estimates the resistance against speed and the watts it takes: friction, form, waves, what hulls side by side do to each other's waves, and air.")
        {
            file, output, load, speeds, water, wind, crew, drive, power, hours, paper, json, units, force,
        };
        verb.SetAction(parsed => Printed.WithFaults(parsed.GetValue(json), parsed.GetValue(file)!, () =>
        {
            var asked = new DragAsked(
                Common.Chosen(parsed, water),
                [.. (parsed.GetValue(speeds) ?? []).Select(k => k * Standards.Knot)],
                parsed.GetValue(crew),
                Drive.All.First(d => d.Key.Equals(parsed.GetValue(drive), StringComparison.Ordinal)),
                parsed.GetValue(power),
                parsed.GetValue(hours) * 3600)
            { HeadWind = (parsed.GetValue(wind) ?? 0) * Standards.Knot };
            return Run(parsed.GetValue(file)!, new Wish(asked, parsed.GetValue(load), parsed.GetValue(output), parsed.GetValue(paper) ?? PaperSize.Letter, parsed.GetValue(json), parsed.GetValue(units), parsed.GetValue(force)));
        }));
        return verb.WithExamples(
            "lines drag tender.toml", "lines drag tender.toml --speeds 3,4,5.5 --water fresh", "lines drag tender.toml --crew 2 --drive wing --hours 2", "lines drag tender.toml --power 100 --wind 10 -o tender-watts.pdf", "lines drag tender.toml --json");
    }

    private static int Run(string path, Wish wish)
    {
        var ending = wish.Output is { } target ? Common.Format(target, ".csv", ".pdf", ".svg") : "";
        if (wish.Output is not null)
            OutputFile.Check(wish.Output, wish.Force);
        var shaped = Shaped.From(path);
        var study = Products.DragOf(shaped, Lying(path, shaped, wish), shaped.Units(wish.Units))
            ?? throw new CommandFailure(ExitCode.Wrong, $"{path}: a hull is under water to its sheer at the design waterline; raise its height, or the sheer");
        if (wish.Output is not null)
        {
            OutputFile.Write(wish.Output, Products.DragIn(shaped, study, wish.Paper, ending), wish.Force);
            Streams.Error.WriteLine($"wrote {wish.Output}");
        }

        if (wish.Json)
            Printed.Json(new Results(path) { Figures = study.Book.Groups });
        else if (wish.Output is null)
            Streams.Out.Write($"{shaped.Design.Title} ({path})\n\n{study.Book.Text()}\n{(shaped.Outriggers.Count > 0 ? Cautions.Outriggers + "\n" : "")}{Cautions.Figures}\n");
        return ExitCode.Done;
    }

    /// <summary>What is asked, with the water plane of the load case.</summary>
    private static DragAsked Lying(string path, Shaped shaped, Wish wish)
    {
        if (wish.Load is null)
            return wish.Asked;
        var (found, afloat) = shaped.FloatingCase(path, wish.Load, wish.Asked.Water);
        var water = afloat.HeldUpright(Craft.Of(shaped.Vessel))
            ?? throw new CommandFailure(ExitCode.Wrong, $"{path}: {found.Name}: held upright she finds no level and trim that carry her weight; drag is told upright only");
        return wish.Asked with { Plane = water, Lies = Invariant($"at rest with the case {found.Name}, trim {Math.Abs(water.Trim) * 180 / Math.PI:0.0} deg by the {(water.Trim < 0 ? "bow" : "stern")}, heel not looked at") };
    }

    private static Option<int> Crew()
    {
        var option = new Option<int>("--crew") { Description = "how many drive the boat: 1, 2 (left out: 1)", HelpName = "COUNT", DefaultValueFactory = _ => 1 };
        option.AcceptOnlyFromAmong("1", "2");
        return option;
    }

    private static Option<string> DriveOption()
    {
        var names = string.Join(", ", Drive.All.Select(d => d.Key));
        var option = new Option<string>("--drive") { Description = $"what they drive her with: {names} (left out: {Drive.FlatBlade.Key}, the blade of a paddle)", HelpName = "DRIVE", DefaultValueFactory = _ => Drive.FlatBlade.Key };
        option.AcceptOnlyFromAmong([.. Drive.All.Select(d => d.Key)]);
        return option;
    }

    /// <summary>A choice of speeds [kn].</summary>
    /// <param name="description">What they are for.</param>
    internal static Option<double[]?> Speeds(string description) => new("--speeds")
    {
        Description = description,
        HelpName = "KNOTS",
        CustomParser = result =>
        {
            string[] parts = [.. result.Tokens[0].Value.Split(',').Select(p => p.Trim().EndsWith("kn", StringComparison.Ordinal) ? p.Trim()[..^2] : p)];
            var speeds = new double[parts.Length];
            for (var i = 0; i < parts.Length; i++)
            {
                if (parts.Length > Most || !double.TryParse(parts[i], NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out speeds[i]) || speeds[i] is not (>= Slowest and <= Fastest))
                {
                    result.AddError(Invariant($"--speeds takes up to {Most} speeds from {Slowest} to {Fastest} knots, separated by commas, not \"{parts[i]}\""));
                    return null;
                }
            }

            return speeds;
        },
    };

    /// <summary>What was asked for.</summary>
    private sealed record Wish(DragAsked Asked, string? Load, string? Output, PaperSize Paper, bool Json, LengthNotation? Units, bool Force);
}
