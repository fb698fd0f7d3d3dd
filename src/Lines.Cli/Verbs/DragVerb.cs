using System.CommandLine;
using System.Globalization;
using System.Text;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Resistance;
using Lines.Kernel.Units;
using Lines.Plans.Figures;
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
        var output = Common.OutputTo("the file to write the table to; its ending says the format: .csv (left out: prints it)");
        var speeds = Speeds();
        var water = Common.Water("the water");
        var verb = new Command("drag", "Estimates the resistance against speed, level at the design waterline: friction, form, waves, and what hulls side by side do to each other's waves.")
        {
            file, output, speeds, water, json, units, force,
        };
        verb.SetAction(parsed => Printed.WithFaults(parsed.GetValue(json), parsed.GetValue(file)!, () =>
        {
            var (path, target) = (parsed.GetValue(file)!, parsed.GetValue(output));
            if (target is not null)
            {
                _ = Common.Format(target, ".csv");
                OutputFile.Check(target, parsed.GetValue(force));
            }

            var shaped = Shaped.From(path);
            var notation = shaped.Units(parsed.GetValue(units));
            var book = Of(path, shaped, Common.Chosen(parsed, water), parsed.GetValue(speeds) ?? [], notation);
            if (target is not null)
            {
                OutputFile.Write(target, Encoding.UTF8.GetBytes(book.Csv()), parsed.GetValue(force));
                Streams.Error.WriteLine($"wrote {target}");
            }

            if (parsed.GetValue(json))
                Printed.Json(new Results(path) { Figures = book.Speeds });
            else if (target is null)
                Streams.Out.Write($"{shaped.Design.Title} ({path})\n\n{book.Text()}\n{Cautions.Figures}\n");
            return ExitCode.Done;
        }));
        return verb.WithExamples("lines drag tender.toml", "lines drag tender.toml --speeds 3,4,5.5 --water fresh", "lines drag tender.toml -o tender-drag.csv", "lines drag tender.toml --json");
    }

    private static DragBook Of(string path, Shaped shaped, Water water, IReadOnlyList<double> knots, LengthNotation notation)
    {
        try
        {
            return DragBook.Of(new DragEstimate(shaped.Vessel, water), [.. knots.Select(k => k * Standards.Knot)], notation);
        }
        catch (DownfloodingException)
        {
            throw new CommandFailure(ExitCode.Wrong, $"{path}: a hull is under water to its sheer at the design waterline; raise its height, or the sheer");
        }
    }

    private static Option<double[]?> Speeds() => new("--speeds")
    {
        Description = "speeds in knots, separated by commas (left out: every half knot to a Froude number of 0.6)",
        HelpName = "KNOTS",
        CustomParser = result =>
        {
            var parts = result.Tokens[0].Value.Split(',');
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
}
