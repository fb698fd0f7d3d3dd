using System.CommandLine;
using System.CommandLine.Parsing;
using Lines.Cli.Input;
using Lines.Cli.Output;
using Lines.Cli.Terminal;
using Lines.Kernel.Units;
using Lines.Plans.Exchange;
using Lines.Plans.Figures;

namespace Lines.Cli.Verbs;

/// <summary><c>lines export FILE</c>: the hull surface for other programs.</summary>
internal static class ExportVerb
{
    private static readonly Format[] Formats =
        [new("step", [".step", ".stp"], false), new("iges", [".igs", ".iges"], false), new("stl", [".stl"], true), new("obj", [".obj"], true)];

    public static Command Make()
    {
        var (file, json, force) = (Common.File(), Common.Json(), Common.ForceFolder("hulls (hull.step, .igs, .stl, .obj)"));
        var output = Common.OutputTo("the folder to write, or one file whose ending says the format (left out: a folder named after FILE)");
        var formats = new Option<Format[]>("--format")
        {
            Description = $"which to write into the folder: {Names} (left out: all)",
            HelpName = "FORMAT",
            AllowMultipleArgumentsPerToken = true,
            CustomParser = result => [.. result.Tokens.Select(t => Named(t.Value, result)).OfType<Format>().Distinct()],
        };
        formats.CompletionSources.Add([.. Formats.Select(f => f.Name)]);
        var tolerance = Common.Length("--tolerance", "greatest distance of the facets of stl and obj from the surface, 0.01 mm to 10 mm (left out: 0.5 mm)", HullMesh.Finest, HullMesh.Coarsest);
        var hull = Common.Hull();
        var verb = new Command("export", "Writes the hull for other programs: STEP and IGES hold the starboard skin (and deck) as surfaces, STL and OBJ a closed body of flat facets; all in mm.")
        {
            file, hull, output, formats, tolerance, json, force,
        };
        verb.SetAction(parsed => Printed.WithFaults(parsed.GetValue(json), parsed.GetValue(file)!, () => Export(
            parsed.GetValue(file)!,
            parsed.GetValue(hull),
            Target.Of(parsed.GetValue(file)!, parsed.GetValue(hull), parsed.GetValue(output), parsed.GetValue(formats) ?? []),
            parsed.GetValue(tolerance),
            parsed.GetValue(json),
            parsed.GetValue(force))));
        return verb.WithExamples("lines export tender.toml", "lines export tender.toml -o hulls/tender.step --force", "lines export tender.toml -o print --format stl obj --tolerance \"0.1 mm\"");
    }

    private static string Names => string.Join(", ", Formats.Select(f => f.Name));

    private static int Export(string path, string? hull, Target target, double? tolerance, bool json, bool force)
    {
        var meshed = target.Formats.Any(f => f.IsMesh);
        if (tolerance is not null && !meshed)
            throw new CommandFailure(ExitCode.Wrong, "--tolerance is for stl and obj; step and iges hold the surface itself");
        var chordError = tolerance ?? HullMesh.UsualChordError;
        target.Check(force);
        var products = new Products(Shaped.From(path, hull), LengthNotation.Millimeters);
        target.Write(products, chordError, force);
        if (json)
            Printed.Json(new Results(path) { Figures = meshed ? [MeshFigures(products, chordError)] : [], Files = target.Files });
        var facets = meshed ? Invariant($" ({products.Mesh(chordError).Count} facets within {1000 * chordError:0.###} mm of the surface)") : "";
        Streams.Error.WriteLine($"wrote {target.Written}{facets}; open {target.First} in {target.Formats[0].Reader}");
        return ExitCode.Done;
    }

    private static FigureGroup MeshFigures(Products products, double chordError) => new("mesh", "Facets",
    [
        new("facets", "Facets", products.Mesh(chordError).Count, Quantity.Count),
        new("chord_error", "Chord error", chordError, Quantity.Length) { Note = "greatest distance of a facet from the surface" },
    ]);

    private static Format? Named(string name, SymbolResult result)
    {
        if (Array.Find(Formats, f => f.Name.Equals(name, StringComparison.OrdinalIgnoreCase)) is { } format)
            return format;
        result.AddError($"--format does not know \"{name}\"; it takes {Names}");
        return null;
    }

    /// <summary>A format.</summary>
    /// <param name="Name">What it is called on the command line.</param>
    /// <param name="Endings">Endings that mean it, the usual one first.</param>
    /// <param name="IsMesh">Whether it holds flat facets rather than the surface.</param>
    private sealed record Format(string Name, string[] Endings, bool IsMesh)
    {
        public string Ending => Endings[0];

        public string Reader => IsMesh ? "a program for 3D printing, milling or pictures" : "a CAD program";
    }

    /// <summary>Where the hull is to go: one file, or a folder with one of each format.</summary>
    private sealed record Target(string Path, bool IsFile, IReadOnlyList<Format> Formats)
    {
        public IReadOnlyList<string> Files => IsFile ? [Path] : [.. Formats.Select(f => System.IO.Path.Combine(Path, NameOf(f)))];

        public string First => IsFile ? "it" : Files[0];

        public string Written => IsFile ? Path : Invariant($"{Formats.Count} {(Formats.Count == 1 ? "file" : "files")} into {Path}");

        /// <exception cref="CommandFailure">An ending that is no format, or a format that is not the ending's.</exception>
        public static Target Of(string design, string? hull, string? output, IReadOnlyList<Format> asked)
        {
            var formats = asked.Count > 0 ? asked : ExportVerb.Formats;
            var ending = System.IO.Path.GetExtension(output ?? "").ToLowerInvariant();
            if (output is null || ending.Length == 0 || Directory.Exists(output))
                return new Target(output ?? Common.NamedAfter(design, "-hull", hull), false, formats);
            Common.Format(output, [.. ExportVerb.Formats.SelectMany(f => f.Endings)]);
            var format = ExportVerb.Formats.Single(f => f.Endings.Contains(ending, StringComparer.Ordinal));
            return asked.Count == 0 || asked is [var only] && only == format
                ? new Target(output, true, [format])
                : throw new CommandFailure(ExitCode.Wrong, $"{output}: its ending says the format; leave out --format, or name a folder");
        }

        public void Check(bool force)
        {
            if (IsFile)
                OutputFile.Check(Path, force);
            else
                OutputFolder.Check(Path, force);
        }

        public void Write(Products products, double chordError, bool force)
        {
            if (IsFile)
            {
                OutputFile.Write(Path, products.Hull(Formats[0].Ending, chordError), force);
                return;
            }

            using var folder = new OutputFolder(Path, force);
            foreach (var format in Formats)
                folder.Add(NameOf(format), products.Hull(format.Ending, chordError));
            // A hull of another format that an earlier run left may be that of another boat.
            folder.Finish(ExportVerb.Formats.Select(NameOf));
        }

        private static string NameOf(Format format) => "hull" + format.Ending;
    }
}
