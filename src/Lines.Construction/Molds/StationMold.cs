using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Construction.Molds;

/// <summary>The mold of one station.</summary>
internal static class StationMold
{
    private const double NotchRadius = 0.004;
    private const double ScrewHole = 0.005;
    private const double ScrewHeight = 0.018;
    private const double LeastDepth = 0.060;
    private const double RoomForProfile = 0.100;
    private const double RoomForTransom = 0.060;
    private const double Advised = 0.001; // what is advised clears the limit by so much, more than lengths are rounded when shown

    /// <summary>Shapes the mold at a station, or says why there is none.</summary>
    /// <param name="shaping">What shaping needs.</param>
    /// <param name="x">The station [m].</param>
    /// <param name="number">Number of the mold.</param>
    /// <param name="passed">Whether a profile mold passes it on its way inward.</param>
    /// <param name="mold">The mold.</param>
    /// <param name="left">Why there is none, where there is none.</param>
    public static bool TryShape(MoldShaping shaping, double x, int number, bool passed, out Mold? mold, out MoldLeftOut? left)
    {
        mold = null;
        left = NoRoom(shaping, x);
        if (left is not null)
            return false;
        if (TryShape(shaping, x, number, passed, out mold, out FormattableString reason))
            return true;
        left = new MoldLeftOut(x, reason) { Key = MoldStations.KeyOf(shaping.Build), Remedy = $"set it elsewhere, or take thinner planking" };
        return false;
    }

    private static bool TryShape(MoldShaping shaping, double x, int number, bool passed, out Mold? mold, out FormattableString reason)
    {
        mold = null;
        var face = MoldFaces.AwayFromMidships(x, shaping.Hull.WidestX);
        var frame = new MoldFrame(
            new Point3(x, 0, shaping.Strongback.Top), new Vector3(0, face.StockSide(), 0), new Vector3(0, 0, -1));
        if (shaping.OnSheer(0, 1, p => p.Point.X - x) is not { } u)
        {
            reason = $"the inside of the planking does not reach it at the sheer";
            return false;
        }

        try
        {
            if (!CrossSection.TryCut(shaping, Plane.AtX(x), frame, u, out var section, out reason))
                return false;
            var depth = section!.Sheer - section.Keel.Point.Z;
            if (!(depth >= LeastDepth))
            {
                reason = $"its section is only {new Length(depth)} deep inside the planking";
                return false;
            }

            Lap? lap = null;
            if (passed && !Lap.TryFind(shaping, section, out lap, out reason))
                return false;
            mold = Shaped(shaping, x, number, face, frame, section, lap);
            return true;
        }
        catch (NoEdgeException e)
        {
            reason = e.Why;
            return false;
        }
    }

    private static MoldLeftOut? NoRoom(MoldShaping shaping, double x)
    {
        var fore = ProfileMold.EdgeAtSheer(shaping, bow: true);
        if (!(x - fore >= RoomForProfile))
            return Left(MoldKind.Stem, TooNear("stem", "aft", x - fore), $"{new Length(fore + RoomForProfile + Advised)} or further aft would do");
        if (shaping.Hull.Transom is not null)
        {
            var transom = Math.Min(shaping.Hull.Side.PointAt(1, 0).X, shaping.Hull.Side.PointAt(1, 1).X);
            return transom - x >= RoomForTransom
                ? null
                : Left(MoldKind.Transom, $"it stands less than {new Length(RoomForTransom)} ahead of the transom", $"{new Length(transom - RoomForTransom - Advised)} or further forward would do");
        }

        var aft = ProfileMold.EdgeAtSheer(shaping, bow: false);
        return aft - x >= RoomForProfile ? null : Left(MoldKind.Stern, TooNear("stern", "ahead", aft - x), $"{new Length(aft - RoomForProfile - Advised)} or further forward would do");

        MoldLeftOut Left(MoldKind end, FormattableString why, FormattableString remedy) => new(x, why)
        {
            Key = MoldStations.KeyOf(shaping.Build),
            Remedy = shaping.Build.MoldAt is null ? $"nothing to do: the end carries the planking there" : remedy,
            InRoomOf = shaping.Build.MoldAt is null ? end : null,
        };
    }

    private static FormattableString TooNear(string end, string way, double distance) => distance > 0
        ? (FormattableString)$"it stands only {new Length(distance)} {way} of the {end} mold's edge at the sheer, and that mold needs {new Length(RoomForProfile)} to stand on"
        : $"the {end} mold's edge at the sheer lies beyond it";

    private static Mold Shaped(MoldShaping shaping, double x, int number, MoldFace face, MoldFrame frame, CrossSection section, Lap? lap)
    {
        double width = shaping.Strongback.Width, stock = shaping.Build.MoldStock;
        var distance = shaping.Strongback.DistanceTo(x);
        var middle = lap is null ? section.PointAtKeel() : new Point2(0, lap.Floor);
        var lowest = lap?.TopHeight ?? section.Keel.Point.Z;
        return new Mold
        {
            Kind = MoldKind.Station,
            Number = number,
            X = x,
            Face = face,
            Frame = frame,
            Outline = Outline(section.EdgeTo(lap?.Top ?? section.Bottom), lap, shaping.Build.StemSiding, width),
            Marks =
            [
                .. section.Waterlines(shaping, lap is null ? lowest : shaping.Strongback.Top - lap.Floor), .. section.SheerMarks(),
                new MoldMark(MoldMarkKind.Centerline, "CL", ArcPath.Line(new Point2(0, NotchRadius), middle), null),
            ],
            Holes =
            [
                new MoldHole(new Point2(-0.36 * width, ScrewHeight), ScrewHole, MoldHoleKind.Screw),
                new MoldHole(new Point2(0.36 * width, ScrewHeight), ScrewHole, MoldHoleKind.Screw),
            ],
            Heights = section.Heights(shaping, lowest),
            Stock = stock,
            Planking = shaping.Skin.Thickness,
            Proud = Proud(shaping, section, lap?.Top ?? section.Bottom, Plane.AtX(x + (face.StockSide() * stock)), frame),
            Bevels = section.BevelsTo(lap?.Top ?? section.Bottom).Unsigned(),
            LapFloor = lap?.Floor,
            Foot = (distance, distance),
        };
    }

    // Counter-clockwise from the right foot: leg, edge over the keel, leg, and back along the strongback round the centerline notch.
    private static ArcPath Outline(ArcPath edge, Lap? lap, double siding, double width)
    {
        var mirrored = ArcPaths.Mirrored(edge);
        double foot = width / 2;
        var notch = new ArcPath([new ArcVertex(new Point2(-NotchRadius, 0), -1), new ArcVertex(new Point2(NotchRadius, 0), 0)], false);
        return ArcPaths.Joined(
            [
                ArcPath.Line(new Point2(foot, 0), edge.Vertices[0].Point), edge, .. lap is null ? (IEnumerable<ArcPath>)[] : [lap.Across(edge.Vertices[^1].Point, siding)],
                mirrored, ArcPath.Line(mirrored.Vertices[^1].Point, new Point2(-foot, 0)), notch,
            ],
            closed: true, MoldShaping.Coincident);
    }

    // Null where the planking gives no section in the far face's plane.
    internal static double? Proud(MoldShaping shaping, CrossSection section, double to, Plane far, MoldFrame frame) =>
        shaping.OnSheer(0, 1, p => far.DistanceTo(p.Point)) is { } u && CrossSection.TryCut(shaping, far, frame, u, out var there, out _)
            ? section.ProudOf(there!, to)
            : null;
}
