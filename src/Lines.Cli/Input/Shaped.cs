using Lines.Cli.Terminal;
using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Construction.Pieces;
using Lines.Design;
using Lines.Design.Diagnostics;
using Lines.Hull.Fairness;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Hull.Loading;
using Lines.Hull.Sections;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;
using Lines.Plans.Figures;

namespace Lines.Cli.Input;

/// <summary>A design with its hulls shaped; what follows from a hull is computed once, when first asked for.</summary>
/// <remarks>An outrigger is shaped as a design of its own, so that all that can be made of a main hull can be made of it.</remarks>
internal sealed class Shaped
{
    /// <summary>Relative error of the integrals below the water [1]: far below what any output shows.</summary>
    private const double IntegralTolerance = 1e-9;

    private readonly Lazy<HullLines> _lines;
    private readonly Lazy<FairnessReport> _fairness;
    private readonly Lazy<Buoyancy> _afloat;
    private readonly Lazy<CurvesOfForm> _curves;
    private readonly Lazy<MoldPlan> _molds;
    private readonly Lazy<HullWeight> _weight;
    private readonly Lazy<IReadOnlyList<Piece>> _pieces;

    private Shaped(VesselDesign design, HullSurface hull, IReadOnlyList<Shaped> outriggers)
    {
        Design = design;
        Hull = hull;
        Outriggers = outriggers;
        _lines = new(() => HullLines.Of(hull));
        _fairness = new(Judge);
        _afloat = new(() => UprightHydrostatics.Below(hull, hull.Draft, IntegralTolerance));
        _curves = new(() => CurvesOfForm.Of(hull, Lines.Grid.Stations, Afloat, IntegralTolerance));
        _molds = new(ShapeMolds);
        _weight = new(Weigh);
        _pieces = new(() => Piece.Of(hull, design.Build, Molds));
    }

    /// <summary>What the main hull is called on the command line.</summary>
    public const string MainHull = "main";

    public VesselDesign Design { get; }

    public HullSurface Hull { get; }

    /// <summary>The outriggers, in the order of the design; a pair is one.</summary>
    public IReadOnlyList<Shaped> Outriggers { get; }

    /// <summary>All hulls at their places.</summary>
    public VesselShape Vessel => new(Hull, [.. Design.Vessel.Outriggers.Zip(Outriggers, (o, s) => (o, s.Hull))]) { Openings = Design.DeckOpenings };

    /// <summary>The weight of this hull alone, planked and sheathed.</summary>
    public HullWeight Weight => _weight.Value;

    /// <summary>The empty boat: as the file tells her weight, else estimated where it tells what she is built of; null where it tells neither.</summary>
    public Structure? Structure => Weighs(Design) ? Design.Vessel.Structure ?? Estimated() : null;

    /// <summary>Whether the empty boat's weight is an estimate.</summary>
    public bool StructureIsEstimated => Design.Vessel.Structure is null;

    /// <summary>The load cases; null where the weight of the empty boat is not known, and then no case can be told.</summary>
    /// <param name="settings">What they are studied for.</param>
    public IReadOnlyList<LoadCaseStudy>? LoadCases(LoadSettings settings) =>
        Structure is { } structure ? LoadCaseStudy.All(Vessel, Design.Vessel, structure, settings) : null;

    /// <summary>One load case in which the boat floats, and how.</summary>
    /// <param name="path">The file, for what is told of it.</param>
    /// <param name="name">Name of the case, as <c>lines float</c> tells it.</param>
    /// <param name="water">The water.</param>
    /// <exception cref="CommandFailure">The boat's weight is not known, it has no such case, or it does not float in it.</exception>
    public (LoadCase Case, CaseAfloat Afloat) FloatingCase(string path, string name, Water water)
    {
        var found = CaseOf(Design, path, name);
        var afloat = CaseAfloat.Of(Craft.Of(Vessel), found.With(Structure!), water.Density);
        return afloat.State == FloatState.Floats ? (found, afloat) : throw new CommandFailure(ExitCode.Wrong, $"{path}: {found.Name}: {LoadCaseFigures.StateOf(afloat)}; --load takes a case in which she floats");
    }

    /// <summary>The load case of a name in a design whose empty boat has a weight.</summary>
    /// <param name="design">The design.</param>
    /// <param name="path">The file, for what is told of it.</param>
    /// <param name="name">Name of the case.</param>
    /// <exception cref="CommandFailure">The boat's weight is not known, or it has no such case.</exception>
    public static LoadCase CaseOf(VesselDesign design, string path, string name)
    {
        if (!Weighs(design))
            throw new CommandFailure(ExitCode.Wrong, $"{path}: --load wants to know what the empty boat weighs; [structure] with mass and at says it, [material] lets it be estimated");
        var cases = LoadCase.All(design.Vessel);
        return cases.FirstOrDefault(c => c.Name.Equals(name, StringComparison.OrdinalIgnoreCase))
            ?? throw new CommandFailure(ExitCode.Wrong, $"{path}: has no load case \"{name}\"; it has {string.Join(", ", cases.Select(c => c.Name))}");
    }

    /// <summary>What load cases are studied for where nothing else is asked.</summary>
    public LoadSettings UsualSettings => new(Water.Sea, LoadSettings.UsualFreeboard, LoadSettings.UsualWind, Design.Build.Joints);

    /// <summary>All hulls with what each displaces, main hull first.</summary>
    public IReadOnlyList<HullOfVessel> Hulls =>
    [
        new("main hull", Hull, Afloat, null),
        .. Outriggers.Zip(Design.Vessel.Outriggers).Select((o, k) => new HullOfVessel(VesselFigures.NameOf(k + 1, o.Second.Side), o.First.Hull, o.First.Afloat, o.Second)),
    ];

    /// <summary>The judgment of each outrigger, with what it is called.</summary>
    public IReadOnlyList<(string Name, FairnessReport Report)> OutriggersJudged =>
        [.. Outriggers.Zip(Design.Vessel.Outriggers).Select((o, k) => (VesselFigures.NameOf(k + 1, o.Second.Side), o.First.Fairness))];

    /// <summary>Whether every hull is fair.</summary>
    public bool AllFair => Fairness.Fair && Outriggers.All(o => o.Fairness.Fair);

    public HullLines Lines => _lines.Value;

    public FairnessReport Fairness => _fairness.Value;

    public Buoyancy Afloat => _afloat.Value;

    public CurvesOfForm Curves => _curves.Value;

    public MoldPlan Molds => _molds.Value;

    /// <summary>The pieces this hull comes apart into; the whole where it has no joints.</summary>
    public IReadOnlyList<Piece> Pieces => _pieces.Value;

    /// <summary>How lengths are shown: as asked, else as most of the design file's are written.</summary>
    public LengthNotation Units(LengthNotation? asked) => asked ?? Design.Source.Notation;

    /// <summary>The figures of this hull alone.</summary>
    public IReadOnlyList<FigureGroup> OwnFigures =>
        [.. TargetFigures.Of(Hull, Afloat, Design.Vessel), .. HullFigures.Of(Hull, Afloat)];

    /// <summary>The figures of this hull, its pieces, and a group for each outrigger.</summary>
    public IReadOnlyList<FigureGroup> Figures => [.. OwnFigures, .. PieceFigures.Of(Pieces), .. VesselFigures.Of(Hulls)];

    /// <summary>Reads a file and shapes its hull.</summary>
    /// <exception cref="CommandFailure">The file is not a sound design, or its dials exclude each other; all was shown.</exception>
    public static Shaped From(string path) => Of(DesignInput.Read(path));

    /// <summary>Reads a file, shapes its hulls and gives one of them.</summary>
    /// <param name="path">The file.</param>
    /// <param name="hull">Which hull, as <see cref="MainHull"/> and <see cref="OutriggerName"/> call them; null for the main one.</param>
    /// <exception cref="CommandFailure">The file is not a sound design, its dials exclude each other, or it has no such hull.</exception>
    public static Shaped From(string path, string? hull)
    {
        var all = From(path);
        string[] names = [MainHull, .. all.Outriggers.Select((_, k) => OutriggerName(k + 1))];
        var index = Array.IndexOf(names, hull ?? MainHull);
        return index < 0
            ? throw new CommandFailure(ExitCode.Wrong, $"--hull: {path} has no hull \"{hull}\"; it has {string.Join(", ", names)}")
            : index == 0 ? all : all.Outriggers[index - 1];
    }

    /// <summary>What an outrigger is called on the command line, and the folder of its files.</summary>
    /// <param name="number">Its number in the design, from 1.</param>
    public static string OutriggerName(int number) => Invariant($"outrigger-{number}");

    /// <summary>Shapes the hull of a design.</summary>
    /// <exception cref="CommandFailure">Its dials exclude each other; that was shown at every dial named.</exception>
    public static Shaped Of(VesselDesign design) => TryOf(design, out var conflicts) ?? throw DesignInput.Refused(conflicts);

    /// <summary>Shapes the hulls of a design, or gives what their dials exclude, at every dial named.</summary>
    public static Shaped? TryOf(VesselDesign design, out IReadOnlyList<Diagnostic> conflicts)
    {
        VesselDesign[] designs = [design, .. design.Outriggers];
        var solutions = Waiting.For(
            "shaping the hull, or the nearest dimensions that go together ...",
            () =>
            {
                var tasks = designs.Select(d => Task.Run(() => HullShape.Solve(d.Vessel, d.Source.AsTold, d.Source.AsTold))).ToList();
                return tasks.Select(t => t.GetAwaiter().GetResult()).ToArray();
            });
        conflicts = [.. designs.Zip(solutions).SelectMany(s => s.First.Source.Explain(s.Second)).OrderBy(d => d.Place)];
        if (conflicts.Count > 0 || solutions.Any(s => s.Surface is null))
            return null;
        var main = solutions[0].Surface!;

        // Beams found for targets could not be held against the spacing before.
        conflicts = [.. design.Outriggers.Zip(solutions.Skip(1)).SelectMany(o => o.First.Source.ExplainSpacing(main.Dials.Beam, o.Second.Surface!.Dials.Beam))];
        return conflicts.Count > 0 ? null : Of(design, [.. solutions.Select(s => s.Surface!)]);
    }

    /// <summary>A design whose hulls are shaped already.</summary>
    /// <param name="design">The design.</param>
    /// <param name="hulls">Its hulls, the main hull first.</param>
    public static Shaped Of(VesselDesign design, IReadOnlyList<HullSurface> hulls) =>
        new(design, hulls[0], [.. design.Outriggers.Zip(hulls.Skip(1), (d, h) => new Shaped(d, h, []))]);

    /// <summary>The molds left out, pieces too large to store, bulkheads and openings that clash, as warnings and notes.</summary>
    public IReadOnlyList<Diagnostic> Warnings => [.. Design.Source.ExplainLeftOut(Molds), .. Design.Source.ExplainStorage(Pieces), .. Design.Source.ExplainClashes(Molds)];

    /// <summary>What looks mistaken in what the boat carries, as notes.</summary>
    public IReadOnlyList<Diagnostic> LoadNotes => Design.Source.ExplainLoads(Vessel);

    /// <summary>The warnings and notes about all hulls and what they carry.</summary>
    public IReadOnlyList<Diagnostic> AllWarnings => [.. Warnings, .. Outriggers.SelectMany(o => o.Warnings), .. BareCompartments, .. LoadNotes];

    /// <summary>The ends of compartments without a bulkhead, as notes.</summary>
    public IReadOnlyList<Diagnostic> BareCompartments => Design.Source.ExplainCompartments(Molds);

    /// <summary>Tells the warnings about all hulls, each at its place in the file.</summary>
    /// <returns>What the command returns: 1 where a mold asked for is missing or a piece does not go into the space it is stored in, or bulkheads and openings clash, else 0.</returns>
    public int Warned()
    {
        DesignInput.Show(AllWarnings);
        return Outriggers.Prepend(this).Any(h => h.Missing.Any() || h.TooLarge.Any() || h.Molds.Clashes.Count > 0) ? ExitCode.Unfair : ExitCode.Done;
    }

    /// <summary>Names the parts that are missing, as the last thing a verb says that made the others.</summary>
    /// <param name="units">How lengths are shown.</param>
    public void TellMissing(LengthNotation units)
    {
        string[] parts = [.. Missing.Select(l => l.Part(units)), .. Outriggers.SelectMany((o, k) => o.Missing.Select(l => Invariant($"{l.Part(units)} of outrigger {k + 1}")))];
        if (parts.Length > 0)
            Streams.Say(Invariant($"{parts.Length} {(parts.Length == 1 ? "part is" : "parts are")} missing: {string.Join(", ", parts)}"));
    }

    private IEnumerable<MoldLeftOut> Missing => Molds.LeftOut.Where(l => l.IsLoss);

    private IEnumerable<Piece> TooLarge => Design.Build.Storage is { } space ? Pieces.Where(p => !p.Fits(space)) : [];

    private static bool Weighs(VesselDesign design) => design.Vessel.Structure is not null || design.Build.Material.IsGiven;

    // The hulls alone, every outrigger at its place; a pair lies in the centerplane.
    private Structure Estimated()
    {
        var floats = Outriggers.Zip(Design.Vessel.Outriggers, (s, o) => (s.Weight, Place: o));
        List<WeightPart> parts =
        [
            new("", "", Weight.Mass, Weight.Center),
            .. floats.Select(f => new WeightPart(
                "",
                "",
                (f.Place.Side == OutriggerSide.Both ? 2 : 1) * f.Weight.Mass,
                f.Weight.Center + new Vector3(f.Place.Aft, f.Place.Side switch { OutriggerSide.Both => 0, OutriggerSide.Port => -f.Place.Spacing, _ => f.Place.Spacing }, f.Place.Height))),
        ];
        return new Structure(parts.Sum(p => p.Mass), HullWeight.CenterOf(parts));
    }

    // Only bulkheads need the molds.
    private HullWeight Weigh()
    {
        var skin = HullWeight.Of(Hull, Design.Build);
        return Design.Build.Joints.Count + Design.Build.Bulkheads.Count > 0 ? skin.With(Molds.Bulkheads, Design.Build.Material) : skin;
    }

    private FairnessReport Judge()
    {
        var report = FairnessReport.Of(Hull);
        // Where targets find dials, another value of one would move those too: what was tried with them fixed would not hold.
        return report.Fair || Design.Vessel.Targets.Asked.Count > 0 ? report : report with { Trials = EasingTrial.Of(report, Hull.Dials, Design.Source.AsTold, Design.Source.Shown) };
    }

    private MoldPlan ShapeMolds()
    {
        try
        {
            return MoldPlan.Of(Hull, Design.Build);
        }
        catch (BuildDialException fault)
        {
            throw DesignInput.Refused(Design.Source.ExplainBuild(fault));
        }
    }
}
