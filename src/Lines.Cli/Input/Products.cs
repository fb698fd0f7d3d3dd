using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using Lines.Cli.Output;
using Lines.Construction.Molds;
using Lines.Construction.Nesting;
using Lines.Design.Diagnostics;
using Lines.Drawing.Dxf;
using Lines.Drawing.Model;
using Lines.Drawing.Pdf;
using Lines.Drawing.Png;
using Lines.Drawing.Svg;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Hull.Offsets;
using Lines.Hull.Propulsion;
using Lines.Hull.Resistance;
using Lines.Hull.Sections;
using Lines.Kernel.Meshes;
using Lines.Kernel.Units;
using Lines.Plans.Building;
using Lines.Plans.Curvature;
using Lines.Plans.Exchange;
using Lines.Plans.Figures;
using Lines.Plans.FormCurves;
using Lines.Plans.LinesPlan;
using Lines.Plans.Molds;
using Lines.Plans.Nesting;
using Lines.Plans.Offsets;
using Lines.Plans.Paper;
using Lines.Plans.Report;
using Lines.Plans.Resistance;
using Lines.Plans.Stability;

namespace Lines.Cli.Input;

/// <summary>The files a shaped design gives, as bytes; verbs and the build of everything take them from here.</summary>
/// <remarks>Several may be asked for at once; each is the same whichever comes first.</remarks>
/// <param name="shaped">The design with its hull.</param>
/// <param name="units">How lengths are shown.</param>
/// <param name="cuts">What a router asks of the molds; null for the usual. Sheets, cutting list and bill go by it alike.</param>
internal sealed class Products(Shaped shaped, LengthNotation units, CutSettings? cuts = null)
{
    /// <summary>Width of a PNG [pixels].</summary>
    private const int PngWidth = 3000;

    private readonly ConcurrentDictionary<bool, Lazy<OffsetsBook>> _books = new();
    private readonly Lazy<FormCurvesBook> _curves = new(() => FormCurvesBook.Of(shaped.Design.Title, shaped.Hull, shaped.Curves, units));
    private readonly Lazy<StabilityBook?> _stability = new(() => StabilityOf(shaped, shaped.UsualSettings, units));
    private readonly Lazy<DragStudy?> _drag = new(() => DragOf(shaped, DragAsked.Usual, units));
    private readonly ConcurrentDictionary<PaperSize, Lazy<Sheet>> _plans = new();
    private readonly ConcurrentDictionary<(bool, PaperSize), Lazy<IReadOnlyList<Sheet>>> _offsets = new();
    private readonly Lazy<Sheet> _curvature = new(() => CurvatureSheet.Of(shaped.Lines, shaped.Design.Title, units));
    private readonly Lazy<IReadOnlyList<Sheet>> _settingUp = new(() =>
    [
        .. SettingUpSheet.Of(shaped.Design.Title, shaped.Hull, shaped.Molds, units, shaped.Fairness.Fair),
        .. FootSheet.Of(shaped.Design.Title, shaped.Hull, shaped.Molds, units, shaped.Fairness.Fair),
    ]);
    private readonly CutSettings _cuts = cuts ?? CutSettings.Usual;
    private readonly Lazy<CuttingPlan> _cutting = new(() => CuttingPlan.Of((cuts ?? CutSettings.Usual).Of(shaped.Molds), shaped.Design.Build));
    private readonly ConcurrentDictionary<double, Lazy<TriangleMesh>> _meshes = new();
    private readonly ConcurrentDictionary<PrintSettings, Lazy<IReadOnlyList<Sheet>>> _patterns = new();

    private BuildingBook? _building;

    /// <summary>How lengths are shown.</summary>
    public LengthNotation Units => units;

    /// <summary>The products of each outrigger, in the order of the design.</summary>
    public IReadOnlyList<Products> Outriggers { get; } = [.. shaped.Outriggers.Select(o => new Products(o, units, cuts))];

    /// <summary>The products of a design file, lengths shown as asked, else as most of the file's are written.</summary>
    /// <param name="path">The file.</param>
    /// <param name="asked">How lengths are shown.</param>
    /// <param name="hull">Which hull; null for the main one.</param>
    public static Products From(string path, LengthNotation? asked, string? hull = null)
    {
        var shaped = Shaped.From(path, hull);
        return new Products(shaped, shaped.Units(asked));
    }

    /// <summary>The lines plan in the format of an ending.</summary>
    public byte[] LinesPlan(PaperSize paper, string ending)
    {
        var plan = Plan(paper);
        return ending switch
        {
            ".pdf" => PdfFile.Write(TitleOf("lines plan"), [plan]),
            ".svg" => Text(SvgFile.Write(plan)),
            ".dxf" => Text(DxfFile.Write(plan)),
            ".png" => PngFile.Write(plan, PngWidth),
            _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of drawings"),
        };
    }

    /// <summary>The lines plan.</summary>
    public Sheet Plan(PaperSize paper) =>
        _plans.GetOrAdd(paper, p => new(() => LinesPlanSheet.Of(
            shaped.Lines, shaped.OwnFigures, new LinesPlanSettings(shaped.Design.Title, p, units) { Joints = shaped.Design.Build.Joints, IsFair = shaped.Fairness.Fair }))).Value;

    /// <summary>The table of offsets in the format of an ending.</summary>
    /// <param name="inside">Whether to the inside of planking rather than the outside.</param>
    /// <param name="paper">Paper of a PDF.</param>
    /// <param name="ending">.txt, .csv or .pdf.</param>
    public byte[] Offsets(bool inside, PaperSize paper, string ending) => ending switch
    {
        ".txt" => Text(OffsetsText.Write(Book(inside))),
        ".csv" => Text(OffsetsCsv.Write(Book(inside), units)),
        ".pdf" => PdfFile.Write(TitleOf("table of offsets"), OffsetsPages(inside, paper)),
        _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of tables"),
    };

    /// <summary>The pages of the table of offsets.</summary>
    public IReadOnlyList<Sheet> OffsetsPages(bool inside, PaperSize paper) =>
        _offsets.GetOrAdd((inside, paper), o => new(() => OffsetsSheets.Draw(Book(o.Item1), o.Item2))).Value;

    /// <summary>The molds for a router, each in a file of its own, then all in one; names without folder.</summary>
    /// <param name="dxf">How the files are written.</param>
    public IEnumerable<(string Name, byte[] Content)> Molds(DxfSettings dxf)
    {
        var plan = _cuts.Of(shaped.Molds);
        foreach (var mold in plan.Parts)
            yield return (MoldFile(mold), Text(DxfFile.Write(MoldSheets.ForRouter(shaped.Design.Title, mold, units), dxf)));
        yield return (EarlierRun.AllMolds, Text(DxfFile.Write(MoldSheets.All(shaped.Design.Title, plan, units), dxf)));
    }

    /// <summary>The sheets the molds are cut from, each in a file of its own, and the cutting list; names without folder.</summary>
    /// <param name="dxf">How the sheets are written.</param>
    public IEnumerable<(string Name, byte[] Content)> Sheets(DxfSettings dxf)
    {
        var plan = Cutting;
        foreach (var sheet in plan.Sheets)
            yield return (NestedSheets.FileName(sheet) + ".dxf", Text(DxfFile.Write(NestedSheets.ForRouter(shaped.Design.Title, plan, sheet, units), dxf)));
        yield return (EarlierRun.CuttingList, PdfFile.Write(TitleOf("cutting list"), CuttingPages));
        yield return ("cutting-list.csv", Text(CuttingList.Csv(shaped.Design.Title, plan, units, shaped.Fairness.Fair)));
    }

    /// <summary>The pages of the cutting list.</summary>
    public IReadOnlyList<Sheet> CuttingPages => CuttingSheets.Of(shaped.Design.Title, Cutting, units, shaped.Fairness.Fair);

    /// <summary>The molds laid on sheets.</summary>
    public CuttingPlan Cutting => _cutting.Value;

    /// <summary>Where every mold stands on the strongback, as PDF.</summary>
    public byte[] SettingUp() => PdfFile.Write(TitleOf("setting up the molds"), SettingUpPages);

    /// <summary>The table of the setting-up sheet, as CSV.</summary>
    public byte[] SettingUpTable() => Text(SettingUpCsv.Write(shaped.Design.Title, shaped.Molds, units, DeckLines.Of(shaped.Hull), shaped.Fairness.Fair));

    /// <summary>Planking, weight, materials and the order of work.</summary>
    public BuildingBook Building => LazyInitializer.EnsureInitialized(ref _building, () => new BuildingBook(
        shaped.Design.Title, shaped.Hull, shaped.Design.Build, shaped.Molds, Cutting, shaped.Weight, shaped.Pieces, units)
    {
        IsOneOfPair = shaped.Design.IsOneOfPair,
        Outriggers = [.. Outriggers.Select((o, k) => (Invariant($"outrigger {k + 1}"), o.Building))],
    });

    /// <summary>Planking, and bill of materials with the order of work, as CSV; names without folder.</summary>
    public IEnumerable<(string Name, byte[] Content)> Lists() =>
        [(EarlierRun.Planking, Text(BuildingCsv.Planking(Building))), (EarlierRun.Materials, Text(BuildingCsv.Materials(Building)))];

    /// <summary>The pages of the setting-up sheet.</summary>
    public IReadOnlyList<Sheet> SettingUpPages => _settingUp.Value;

    /// <summary>The molds full size, tiled onto the paper of a home printer, as PDF.</summary>
    public byte[] Patterns(PrintSettings settings) =>
        PdfFile.Write(TitleOf($"full-size patterns on {settings.Paper.Name} paper"), PatternPages(settings));

    /// <summary>The pages of the patterns.</summary>
    public IReadOnlyList<Sheet> PatternPages(PrintSettings settings) =>
        _patterns.GetOrAdd(settings, p => new(() => TiledPaper.Of(
            [.. shaped.Molds.Parts.Select(m => MoldSheets.ForPaper(shaped.Design.Title, m, units, p))], p, shaped.Fairness.Fair, [.. NotMade], units))).Value;

    /// <summary>The molds as the numbers name them.</summary>
    /// <param name="folder">Folder of their files, with a slash at its end, or nothing.</param>
    public IReadOnlyList<MoldEntry> MoldEntries(string folder) =>
        [.. shaped.Molds.Parts.Select(m => new MoldEntry(folder + MoldFile(m), m.X, m.Face.ToString().ToLowerInvariant()))];

    /// <summary>The curvature plate of the report.</summary>
    public Sheet Curvature => _curvature.Value;

    /// <summary>The figures of the curves of form.</summary>
    public FormCurvesBook Curves => _curves.Value;

    /// <summary>The curves of form in the format of an ending.</summary>
    /// <param name="paper">Paper of a PDF.</param>
    /// <param name="ending">.csv or .pdf.</param>
    public byte[] FormCurves(PaperSize paper, string ending) => ending switch
    {
        ".csv" => Text(Curves.Csv()),
        ".pdf" => PdfFile.Write(TitleOf("curves of form"), FormCurvesPages.Of(Curves, shaped.Curves, paper)),
        _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of curves of form"),
    };

    /// <summary>What the boat takes and her crew gives at the usual speeds: one in sea water, with flat blades; null where a hull is under water to its sheer.</summary>
    public DragStudy? Drag => _drag.Value;

    /// <summary>Drag and power of a design.</summary>
    /// <param name="shaped">The design with its hulls.</param>
    /// <param name="asked">What is asked.</param>
    /// <param name="units">How lengths are shown.</param>
    /// <returns>Null where a hull is under water to its sheer.</returns>
    public static DragStudy? DragOf(Shaped shaped, DragAsked asked, LengthNotation units)
    {
        try
        {
            var drag = new DragEstimate(shaped.Vessel, asked.Water, asked.Plane, asked.Crew, shaped.Design.Vessel.Appendage, asked.HeadWind);
            return new DragStudy(drag, DragBook.Of(drag, asked.Speeds, CrewBook.Of(new CrewPower(drag, asked.Drive, asked.Crew), asked.Watts, asked.Seconds, units), $"{asked.Lies}, {new Mass(drag.Displacement).ToText(inPounds: units != LengthNotation.Millimeters)} all told"));
        }
        catch (DownfloodingException)
        {
            return null;
        }
    }

    /// <summary>Drag and power in the format of an ending.</summary>
    /// <param name="shaped">The design.</param>
    /// <param name="study">The figures.</param>
    /// <param name="paper">The paper whose longer side the drawing is as wide as.</param>
    /// <param name="ending">.csv, .pdf or .svg.</param>
    public static byte[] DragIn(Shaped shaped, DragStudy study, PaperSize paper, string ending) => ending switch
    {
        ".csv" => Text(study.Book.Csv()),
        ".pdf" => PdfFile.Write($"{shaped.Design.Title}: watts and drag", [DragPage(shaped, study, paper)]),
        ".svg" => Text(SvgFile.Write(DragPage(shaped, study, paper))),
        _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of drag"),
    };

    private static Sheet DragPage(Shaped shaped, DragStudy study, PaperSize paper) =>
        DragSheet.Of(shaped.Design.Title, study.Drag, study.Book.Crew, paper.Height, shaped.Outriggers.Count > 0, study.Book.Lies);

    /// <summary>The load cases; null where the weight of the empty boat is not in the file.</summary>
    public StabilityBook? Stability => _stability.Value;

    /// <summary>The load cases of a design in figures.</summary>
    public static StabilityBook? StabilityOf(Shaped shaped, LoadSettings settings, LengthNotation units) =>
        shaped.LoadCases(settings) is { } studies ? new StabilityBook(shaped.Design.Title, shaped.Hull, studies, settings, units) { HasOutriggers = shaped.Outriggers.Count > 0, Openings = shaped.Design.DeckOpenings } : null;

    /// <summary>Load cases and stability in the format of an ending.</summary>
    /// <param name="book">The load cases.</param>
    /// <param name="paper">Paper of a PDF, and what a picture is as wide as.</param>
    /// <param name="ending">.pdf or .svg.</param>
    public static byte[] LoadCases(StabilityBook book, PaperSize paper, string ending) => ending switch
    {
        ".pdf" => PdfFile.Write($"{book.Title}: load cases and stability", StabilityPages.Of(book, paper)),
        ".svg" => Text(SvgFile.Write(StabilityPages.Arms(book, paper))),
        _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of load cases"),
    };

    /// <summary>The report.</summary>
    /// <param name="plan">Paper of the lines plan in it.</param>
    /// <param name="paper">Paper of the curves of form in it.</param>
    /// <param name="files">The files beside it.</param>
    public byte[] Report(PaperSize plan, PaperSize paper, IReadOnlyList<ReportFile> files) => Text(ReportPage.Of(new ReportContent(
        shaped.Design.Title,
        Plan(plan),
        Curvature,
        [.. shaped.Figures, .. Building.Figures],
        new ReportCurves(Curves, FormCurvesPages.Curves(Curves, paper), FormCurvesPages.Sections(Curves, shaped.Curves, paper)),
        units,
        shaped.Fairness,
        files)
    {
        Stability = Stability is { } cases ? new ReportStability(cases, StabilityPages.Arms(cases, paper), StabilityPages.Bending(cases, paper)) : null,
        Drag = Drag is { } study ? new ReportDrag(study.Book, DragPage(shaped, study, paper)) : null,
        Building = Building,
        HasOutriggers = shaped.Outriggers.Count > 0,
        Warnings = [.. LeftOut(loss: true), .. Clashing, .. Judged(fair: false)],
        Notes = [.. Judged(fair: true), .. EstimatedWeight, .. Told(shaped.LoadNotes), .. Told(shaped.BareCompartments), .. LeftOut(loss: false), .. shaped.Molds.ApexSentences(units)],
    }));

    /// <summary>The hull for other programs in the format of an ending.</summary>
    /// <param name="ending">.step, .igs, .stl or .obj.</param>
    /// <param name="chordError">Greatest distance of the facets of the last two from the surface [m].</param>
    public byte[] Hull(string ending, double chordError)
    {
        var remark = Invariant($"Hull in mm: x aft, y to starboard, z up; chord error {1000 * chordError:0.###} mm");
        return ending switch
        {
            ".step" => Text(StepFile.Write(shaped.Hull, shaped.Design.Title)),
            ".igs" => Text(IgesFile.Write(shaped.Hull, shaped.Design.Title)),
            ".stl" => StlFile.Write(Mesh(chordError), remark),
            ".obj" => Text(ObjFile.Write(Mesh(chordError), remark)),
            _ => throw new ArgumentOutOfRangeException(nameof(ending), ending, "not a format of hulls"),
        };
    }

    /// <summary>The hull as flat facets.</summary>
    /// <param name="chordError">Greatest distance from the surface [m].</param>
    public TriangleMesh Mesh(double chordError) => _meshes.GetOrAdd(chordError, e => new(() => HullMesh.Of(shaped.Hull, e))).Value;

    // The verdicts on the outriggers that are fair, or are not, a sentence each.
    private IEnumerable<string> Judged(bool fair) => shaped.OutriggersJudged.Where(o => o.Report.Fair == fair).Select(o => $"{FigureText.Capital(o.Name)}: {o.Report.Verdict}");

    /// <summary>That the load cases go by the estimated weight of the boat, one sentence; none where her weight is in the file.</summary>
    public IEnumerable<string> EstimatedWeight => shaped is { StructureIsEstimated: true, Structure: { } boat }
        ? [$"Load cases take the empty boat's weight from her materials, {new Mass(boat.Mass).ToText(inPounds: units != LengthNotation.Millimeters)}: {BuildingFigures.NotWeighed}. Weigh her, and write [structure]."]
        : [];

    // The parts asked for that are not made, and why, a sentence each.
    private IEnumerable<string> NotMade => shaped.Molds.LeftOut.Where(l => l.IsLoss).Select(l => l.Sentence(units));

    // The molds of all hulls that are missing, or left out without loss, with what would do, a sentence each.
    private IEnumerable<string> LeftOut(bool loss) => shaped.Outriggers.Zip(shaped.Design.Vessel.Outriggers)
        .Select((o, k) => (Whose: FigureText.Capital(VesselFigures.NameOf(k + 1, o.Second.Side)) + ": ", o.First.Molds)).Prepend((Whose: "", shaped.Molds))
        .SelectMany(h => h.Molds.LeftOut.Where(l => l.IsLoss == loss).Select(l => FigureText.Capital($"{h.Whose}{l.Headline(units)}: {l.Reason(units)}; {l.Advice(units)}.")));

    // Notes on the design file as sentences.
    private static IEnumerable<string> Told(IEnumerable<Diagnostic> notes) => notes.Select(n => $"{n.Key} (line {n.Place.Line.ToString(CultureInfo.InvariantCulture)}): {n.Problem}; {n.Remedy}.");

    // The bulkheads and openings that cannot be where the file puts them, a sentence each.
    private IEnumerable<string> Clashing => shaped.Molds.Clashes.Select(
        c => $"{FigureText.Capital(c.IsOpening ? shaped.Design.Build.Openings[c.Index].Name : shaped.Design.Build.Bulkheads[c.Index].Name)}: {c.What.Told(units)}.");

    private OffsetsBook Book(bool inside) => _books.GetOrAdd(inside, i => new(() => OffsetsBook.Of(
        i ? TableOfOffsets.Inside(shaped.Lines, shaped.Design.Build.Planking) : TableOfOffsets.Outside(shaped.Lines), shaped.Design.Title, units))).Value;

    private string TitleOf(string document) => $"{shaped.Design.Title}: {document}";

    private static string MoldFile(Mold mold) => MoldSheets.FileName(mold) + ".dxf";

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);
}
