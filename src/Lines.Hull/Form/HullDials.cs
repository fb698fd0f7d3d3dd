namespace Lines.Hull.Form;

/// <summary>What a designer asks of one hull: plain dimensions, SI, to the outside of planking.</summary>
/// <remarks><b>Frame.</b> Hull frame: x aft from the foremost point, y to starboard, z up from the lowest point of the keel.</remarks>
public sealed record HullDials
{
    /// <summary>Foremost to aftmost point [m].</summary>
    public required double Length { get; init; }

    /// <summary>Greatest breadth [m].</summary>
    public required double Beam { get; init; }

    /// <summary>Height of the sheer at the widest station [m].</summary>
    public required double Depth { get; init; }

    /// <summary>Height of the design waterline [m].</summary>
    public required double Draft { get; init; }

    /// <summary>Widest point of the design waterline as a fraction of its length from its fore end; null puts it amidships, with a transom at 0.56, or as near to that as the waterline bends no more than a tenth above its least.</summary>
    public double? Widest { get; init; }

    /// <summary>Lowest point of the keel as a fraction of the hull's length; null puts it at the widest station.</summary>
    public double? KeelLow { get; init; }

    /// <summary>Whether lines may curve inward near the ends.</summary>
    public bool Hollow { get; init; }

    /// <summary>Height of the deck at the centerplane above the sheer, where the sheer is broadest [m]; null leaves the hull open.</summary>
    public double? Crown { get; init; }

    /// <summary>The bow.</summary>
    public required BowDials Bow { get; init; }

    /// <summary>The stern.</summary>
    public required SternDials Stern { get; init; }

    /// <summary>The section at the widest station.</summary>
    public required MidshipDials Midship { get; init; }
}

/// <summary>What is asked of the bow.</summary>
/// <param name="EntryFullness">Area of the half design waterplane forward of its widest point over the rectangle around it.</param>
/// <param name="Rocker">Height of the keel at the forefoot [m].</param>
/// <param name="Sheer">Height of the sheer at the bow [m].</param>
/// <param name="Forefoot">Where the stem meets the keel, aft of the foremost point [m].</param>
/// <param name="SheerFullness">The same measure as EntryFullness for the sheer in plan; null leaves it to the batten.</param>
/// <param name="Vee">Angle of the section from level at the keel, 5 % of the design waterline's length aft of the forefoot [rad]; null is fairest.</param>
/// <param name="EntryAngle">Half-angle of entrance at the design waterline [rad]; null leaves it to the batten.</param>
/// <param name="Profile">What the stem looks like from abeam.</param>
public sealed record BowDials(
    double EntryFullness, double Rocker, double Sheer, double Forefoot, double? SheerFullness = null, double? Vee = null, double? EntryAngle = null,
    StemProfile Profile = StemProfile.Curved);

/// <summary>What a stem or sternpost looks like from abeam, between where it leaves the keel and the sheer.</summary>
public enum StemProfile
{
    /// <summary>A quarter ellipse that comes to the sheer plumb.</summary>
    Curved,

    /// <summary>Plumb most of the way, from a tighter turn out of the keel.</summary>
    Plumb,

    /// <summary>Leaning outward and nearly straight above the turn out of the keel.</summary>
    Raked,
}

/// <summary>What is asked of the stern: <see cref="PointedStern"/> or <see cref="TransomStern"/>.</summary>
/// <param name="RunFullness">Area of the half design waterplane aft of its widest point over the rectangle around it.</param>
/// <param name="Sheer">Height of the sheer at the stern [m].</param>
/// <param name="SheerFullness">The same measure for the sheer in plan; null leaves it to the batten.</param>
public abstract record SternDials(double RunFullness, double Sheer, double? SheerFullness)
{
    /// <summary>Height of the keel's after end: the heel, or the foot of a transom [m].</summary>
    public double FootHeight => this is PointedStern p ? p.Rocker : ((TransomStern)this).Foot;
}

/// <summary>A stern that comes to an edge like the bow.</summary>
/// <param name="RunFullness">See <see cref="SternDials"/>.</param>
/// <param name="Rocker">Height of the keel at the heel [m].</param>
/// <param name="Sheer">Height of the sheer at the stern [m].</param>
/// <param name="Heel">Where the sternpost meets the keel, forward of the aftmost point [m].</param>
/// <param name="SheerFullness">See <see cref="SternDials"/>.</param>
/// <param name="Vee">As for the bow, 5 % of the design waterline's length forward of the heel [rad].</param>
/// <param name="RunAngle">Half-angle of the run at the design waterline's after end [rad]; null leaves it to the batten.</param>
/// <param name="Profile">What the sternpost looks like from abeam.</param>
public sealed record PointedStern(
    double RunFullness, double Rocker, double Sheer, double Heel, double? SheerFullness = null, double? Vee = null, double? RunAngle = null,
    StemProfile Profile = StemProfile.Curved)
    : SternDials(RunFullness, Sheer, SheerFullness);

/// <summary>A stern cut off by a flat transom.</summary>
/// <param name="RunFullness">See <see cref="SternDials"/>.</param>
/// <param name="Foot">Height of the transom's foot [m]: the keel's rise, or draft less immersion.</param>
/// <param name="Sheer">Height of the sheer at the transom [m].</param>
/// <param name="Rake">Angle from plumb [rad], positive where the top is aft of the foot.</param>
/// <param name="Breadth">Greatest breadth in the transom's own plane [m].</param>
/// <param name="SheerFullness">See <see cref="SternDials"/>.</param>
/// <param name="FootIsImmersion">Whether the file gave the foot as an immersion (so that a conflict names the right key).</param>
public sealed record TransomStern(
    double RunFullness, double Foot, double Sheer, double Rake, double Breadth, double? SheerFullness = null, bool FootIsImmersion = false)
    : SternDials(RunFullness, Sheer, SheerFullness);

/// <summary>What is asked of the section at the widest station.</summary>
/// <param name="Deadrise">Angle from level at the keel [rad].</param>
/// <param name="Fullness">Immersed area over breadth at the waterline times the section's own draft.</param>
/// <param name="Flare">Angle from plumb at the sheer [rad]; negative is tumblehome.</param>
public sealed record MidshipDials(double Deadrise, double Fullness, double Flare);

/// <summary>The dials by name, so that a conflict found in the hull can be shown at its place in the design file.</summary>
public enum Dial
{
    /// <summary>hull.length</summary>
    Length,

    /// <summary>hull.beam</summary>
    Beam,

    /// <summary>hull.depth</summary>
    Depth,

    /// <summary>hull.draft</summary>
    Draft,

    /// <summary>hull.widest</summary>
    Widest,

    /// <summary>hull.keel_low</summary>
    KeelLow,

    /// <summary>hull.hollow</summary>
    Hollow,

    /// <summary>hull.bow.entry_fullness</summary>
    EntryFullness,

    /// <summary>hull.bow.sheer_fullness</summary>
    BowSheerFullness,

    /// <summary>hull.bow.rocker</summary>
    BowRocker,

    /// <summary>hull.bow.sheer</summary>
    BowSheer,

    /// <summary>hull.bow.forefoot</summary>
    Forefoot,

    /// <summary>hull.bow.vee</summary>
    BowVee,

    /// <summary>hull.bow.entry_angle</summary>
    EntryAngle,

    /// <summary>hull.stern.run_fullness</summary>
    RunFullness,

    /// <summary>hull.stern.sheer_fullness</summary>
    SternSheerFullness,

    /// <summary>hull.stern.rocker</summary>
    SternRocker,

    /// <summary>hull.stern.immersion</summary>
    TransomImmersion,

    /// <summary>hull.stern.sheer</summary>
    SternSheer,

    /// <summary>hull.stern.heel</summary>
    Heel,

    /// <summary>hull.stern.vee</summary>
    SternVee,

    /// <summary>hull.stern.run_angle</summary>
    RunAngle,

    /// <summary>hull.stern.rake</summary>
    TransomRake,

    /// <summary>hull.stern.breadth</summary>
    TransomBreadth,

    /// <summary>hull.midship.deadrise</summary>
    Deadrise,

    /// <summary>hull.midship.fullness</summary>
    MidshipFullness,

    /// <summary>hull.midship.flare</summary>
    Flare,
}
