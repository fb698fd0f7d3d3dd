using Lines.Construction.Materials;
using Lines.Construction.Molds;
using Lines.Construction.Pieces;
using Lines.Construction.Planking;
using Lines.Kernel.Units;

namespace Lines.Construction;

/// <summary>What a builder decides: the [build] table of the design file, SI.</summary>
public sealed record BuildDials
{
    /// <summary>Thickness of the planking [m], deducted from the molds square to the surface.</summary>
    public required double Planking { get; init; }

    /// <summary>Thickness of the inner cloth [m], deducted with the planking for bulkheads.</summary>
    public double Sheathing { get; init; } = 0.0004;

    /// <summary>Distance between mold stations [m].</summary>
    public double MoldSpacing { get; init; } = 0.300;

    /// <summary>Thickness of the mold stock [m].</summary>
    public double MoldStock { get; init; } = 0.012;

    /// <summary>Thickness of the deck of a closed hull [m], as much as planking and inner cloth: bulkheads and transom end under it.</summary>
    public double DeckThickness => Planking + Sheathing;

    /// <summary>Width of a planking strip [m].</summary>
    public double StripWidth { get; init; } = 0.019;

    /// <summary>Thickness of the inner stem [m].</summary>
    public double StemSiding { get; init; } = 0.019;

    /// <summary>Length of the sheets molds are cut from [m].</summary>
    public double SheetLength { get; init; } = 8 * Length.Foot;

    /// <summary>Width of the sheets [m].</summary>
    public double SheetWidth { get; init; } = 4 * Length.Foot;

    /// <summary>Least distance of a part from the edges of its sheet [m]: clamps and screws hold the sheet there.</summary>
    public double SheetMargin { get; init; } = 0.015;

    /// <summary>Least distance of two parts on a sheet [m]: a tool passes between them and leaves wood on both sides.</summary>
    public double PartSpacing { get; init; } = 0.012;

    /// <summary>Whether parts keep the grain: their breadth along the sheet, turned end for end at most.</summary>
    public bool Grain { get; init; }

    /// <summary>Take-apart planes, x from the bow [m].</summary>
    public IReadOnlyList<double> Joints { get; init; } = [];

    /// <summary>Mold stations, x from the bow [m], in place of even spacing; null spaces them from the widest station.</summary>
    public IReadOnlyList<double>? MoldAt { get; init; }

    /// <summary>Height of the strongback top above the base line, hull upright [m]; null stands it clear of the highest sheer.</summary>
    public double? StrongbackTop { get; init; }

    /// <summary>Breadth of the strongback's section, and of every mold's foot [m]; null takes a third of the beam.</summary>
    public double? StrongbackWidth { get; init; }

    /// <summary>Depth of the strongback's section [m].</summary>
    public double StrongbackDepth { get; init; } = Strongback.UsualDepth;

    /// <summary>The strongback's own sizes are whole multiples of this [m]: 10 mm, or an inch for a design written in inches.</summary>
    public double StrongbackStep { get; init; } = 0.010;

    /// <summary>Which line the strips run along.</summary>
    public StripRun Strips { get; init; } = StripRun.Sheer;

    /// <summary>Length of the boards that strips are sawn from [m].</summary>
    public double BoardLength { get; init; } = 2.4;

    /// <summary>What a saw takes away between strips [m].</summary>
    public double SawKerf { get; init; } = 0.003;

    /// <summary>Strips sawn beyond those that lie on the hull, as a part of them.</summary>
    public double Waste { get; init; } = 0.15;

    /// <summary>Depth of the inner and outer stems, square to their siding [m].</summary>
    public double StemMolding { get; init; } = 0.025;

    /// <summary>Side of the square inwales and outwales [m]; 0 for none.</summary>
    public double Gunwale { get; init; }

    /// <summary>Width of the saw cut between the two bulkheads of a joint [m].</summary>
    public double JointGap { get; init; } = 0.004;

    /// <summary>Diameter of the bolts of a joint [m].</summary>
    public double JointBolt { get; init; } = 0.008;

    /// <summary>Room to work that molds leave beside the bulkheads of a joint [m].</summary>
    public double JointClearance { get; init; } = 0.030;

    /// <summary>Diameter of the opening in every bulkhead, for a hatch or to save weight [m]; null for none.</summary>
    public double? BulkheadOpening { get; init; }

    /// <summary>Length, breadth and height of the space the pieces are stored in, in whichever order [m]; null where it is not known.</summary>
    public IReadOnlyList<double>? Storage { get; init; }

    /// <summary>Bulkheads beside those of the joints, in the order of the file.</summary>
    public IReadOnlyList<BulkheadPlace> Bulkheads { get; init; } = [];

    /// <summary>Openings in bottom and deck, in the order of the file.</summary>
    public IReadOnlyList<HullOpening> Openings { get; init; } = [];

    /// <summary>Thickness of the plywood of bulkheads and transom [m].</summary>
    public double BulkheadStock { get; init; } = 0.009;

    /// <summary>What the hull is built of.</summary>
    public MaterialDials Material { get; init; } = new();
}
