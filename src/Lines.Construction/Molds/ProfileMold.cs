using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>The mold of a sharp end, in the centerplane.</summary>
/// <remarks>
/// <para><b>Method.</b> The mold is a board as thick as the inner stem is sided, its edge square. The planking of each side lands on the corner of
/// that edge, so the edge is where the inside of the planking reaches half the siding: the section of the inset skin by the plane
/// y = siding / 2. Bevelled from those corners the two insides meet at the centerplane farther out, t / sin(half-angle) from the face of
/// a straight stem: that line is marked beside the mold as the edge of an inner stem.</para>
/// <para>It runs from past the sheer down the stem and along the keel to the station face of the first mold abaft the foot of the stem, and
/// butts against that; its inner edge is that face's upright line, its foot stands on the strongback. With the station molds that stand
/// nearer to the end it shares slots (<see cref="Lap"/>).</para>
/// </remarks>
internal static class ProfileMold
{
    private const double ClampHole = 0.032;
    private const double ClampInset = 0.045;
    private const double ClampSpacing = 0.100;
    private const double FirstClamp = 0.085;
    private const double ClampMargin = 0.030;
    private const double ScrewHole = 0.005;
    private const double ScrewHeight = 0.018;
    private const double TwoScrews = 0.150;

    /// <summary>Greatest distance of the marked apex from the exact one [m], the shop's, and not half of it as for what is cut: where the keel turns more tightly than
    /// the planking is thick the exact one has folds of some micrometers, which need not be followed.</summary>
    private const double ApexTolerance = 2e-5;

    /// <summary>x where the edge of the mold crosses the level of the sheer's own parameter line [m].</summary>
    public static double EdgeAtSheer(MoldShaping shaping, bool bow) => shaping.Skin.At(SheerU(shaping, bow, shaping.Build.StemSiding / 2), 1).Point.X;

    /// <summary>Shapes the mold of one end.</summary>
    /// <param name="shaping">What shaping needs.</param>
    /// <param name="bow">Whether it is the stem.</param>
    /// <param name="stations">The station molds from the bow.</param>
    /// <exception cref="NoEdgeException">The inside finds no edge, or no station mold stands where it could end.</exception>
    public static Mold Shape(MoldShaping shaping, bool bow, IReadOnlyList<Mold> stations)
    {
        List<Mold> inward = [.. bow ? stations : stations.Reverse()], passed = [.. inward.TakeWhile(m => m.LapFloor is not null)];
        if (passed.Count == inward.Count)
            throw new NoEdgeException($"no station mold stands inward of its foot for it to butt against");
        var x = NearFace(inward[passed.Count], bow);
        var frame = new MoldFrame(new Point3(shaping.Strongback.ForeX, 0, shaping.Strongback.Top), new Vector3(1, 0, 0), new Vector3(0, 0, -1));
        if (!Profile.TryCut(shaping, bow, x, shaping.Build.StemSiding / 2, out var corners, out var reason))
            throw new NoEdgeException(reason);
        var mold = Shaped(shaping, bow, x, passed, corners!, frame);
        return TryApex(shaping, bow, x, frame, out var apex, out reason)
            ? mold with { Marks = [.. mold.Marks, apex!], InnerStemDepth = Farthest(apex!.Path, mold.Outline) }
            : mold with { WhyNoApex = reason };
    }

    private static double Farthest(ArcPath line, ArcPath outline) => line.Flattened(ApexTolerance).Max(outline.DistanceTo);

    // A mark to plane to, so the mold may go without it; the sheet says why.
    private static bool TryApex(MoldShaping shaping, bool bow, double x, MoldFrame frame, out MoldMark? apex, out FormattableString reason)
    {
        apex = null;
        if (!Profile.TryCut(shaping, bow, x, 0, out var middle, out reason))
            return false;
        try
        {
            apex = new MoldMark(MoldMarkKind.Apex, "APEX", middle!.On(frame, ApexTolerance), null);
            return true;
        }
        catch (NoEdgeException e)
        {
            reason = e.Why;
            return false;
        }
    }

    // The face of a station mold that an end's profile meets first [m]: the labeled one unless the mold stands on the far side of the widest station.
    private static double NearFace(Mold mold, bool bow) => bow ? Math.Min(mold.X, mold.FarX) : Math.Max(mold.X, mold.FarX);

    private static Mold Shaped(MoldShaping shaping, bool bow, double x, List<Mold> passed, Profile profile, MoldFrame frame)
    {
        var (cut, mark) = (profile.Cut, profile.SheerMark);
        var edge = profile.On(frame, MoldShaping.FitTolerance);
        Point2 top = edge.Vertices[0].Point, end = edge.Vertices[^1].Point, sheer = frame.ToDrawing(cut.At(mark).Point);
        double inner = shaping.Strongback.DistanceTo(x);
        List<Slot> slots = [.. passed.Select(m => new Slot(m))];
        var foot = ArcPath.Through(
            [new Point2(inner, end.Y), new Point2(inner, 0), .. Enumerable.Reverse(slots).SelectMany(s => s.Corners(bow)), new Point2(top.X, 0)]);
        var around = ArcPaths.Joined([edge, foot], closed: false, MoldShaping.Coincident);
        var outline = (bow ? around.Reversed() : around) with { Closed = true };
        var siding = shaping.Build.StemSiding;
        return new Mold
        {
            Kind = bow ? MoldKind.Stem : MoldKind.Stern,
            Number = 0,
            X = cut.At(mark).Point.X,
            Face = MoldFace.Starboard,
            Frame = frame,
            Outline = outline,
            Marks = [.. Waterlines(shaping, cut, frame, inner), SheerMark(sheer, shaping.Strongback.Top - sheer.Y, bow), .. slots.Select(s => StationMark(s, cut, frame))],
            Holes = [.. FootHoles(slots, top.X, inner), .. ClampHoles(edge, outline, Math.Sign(inner - top.X))],
            Heights = new MoldHeights(
                sheer.Y,
                cut.Where(p => p.Point.Z - shaping.Hull.Draft) is null ? null : shaping.Strongback.HeightOf(shaping.Hull.Draft),
                end.Y,
                siding / 2),
            Bevels = Bevels(shaping, bow, cut, mark),
            Stock = siding,
            Planking = shaping.Skin.Thickness,
            Foot = (Math.Min(top.X, inner), Math.Max(top.X, inner)),
        };
    }

    // At the sheer, at every waterline under it, at the foot of the stem, and at the lower end.
    private static EdgeBevels Bevels(MoldShaping shaping, bool bow, InsetSection cut, double mark)
    {
        var foot = shaping.Hull.Side.PointAt(bow ? 0 : 1, 0).X;
        IEnumerable<(string Name, double? At)> places =
        [
            .. shaping.Waterlines.Select(w => (w.Label, cut.Where(p => p.Point.Z - w.Position))), ("FOOT", cut.Where(p => p.Point.X - foot)),
        ];
        return EdgeBevels.Along(
            cut, mark, cut.Length, [("SHEER", mark), .. places.Where(p => p.At > mark && p.At < cut.Length).Select(p => (p.Name, p.At!.Value)), ("END", cut.Length)]);
    }

    private static double SheerU(MoldShaping shaping, bool bow, double halfBreadth) =>
        shaping.OnSheer(bow ? 0 : 1, shaping.Hull.WidestU, p => p.Point.Y - halfBreadth)
        ?? throw new BuildDialException("stem_siding", "the inner stem is wider than the boat inside its planking", null) { Remedy = "give less" };

    private static IEnumerable<MoldMark> Waterlines(MoldShaping shaping, InsetSection cut, MoldFrame frame, double inner)
    {
        foreach (var waterline in shaping.Waterlines)
        {
            if (cut.Where(p => p.Point.Z - waterline.Position) is not { } s)
                continue;
            var at = cut.At(s).Point;
            if (at.Z >= shaping.SheerAt(at.X))
                continue;
            var p = frame.ToDrawing(at);
            yield return shaping.Mark(waterline, ArcPath.Line(p, new Point2(inner, p.Y)));
        }
    }

    private static MoldMark SheerMark(Point2 at, double height, bool bow) =>
        new(MoldMarkKind.Sheer, "SHEER", ArcPath.Line(at, new Point2(at.X + (bow ? 0.040 : -0.040), at.Y)), height);

    private static MoldMark StationMark(Slot slot, InsetSection cut, MoldFrame frame)
    {
        var edge = cut.Where(p => p.Point.X - slot.Of.X) ?? throw new NoEdgeException($"its edge does not reach mold {slot.Of.Name}");
        var at = frame.ToDrawing(cut.At(edge).Point);
        return new MoldMark(MoldMarkKind.Station, slot.Of.Name, ArcPath.Line(at with { Y = slot.Floor }, at), null);
    }

    // Two screws in each length of foot between slots, or one where that is short.
    private static IEnumerable<MoldHole> FootHoles(List<Slot> slots, double top, double inner)
    {
        double[] ends = [.. slots.SelectMany(s => new[] { s.Low, s.High }).Append(top).Append(inner).Order()];
        foreach (var bay in ends.Chunk(2))
        {
            var width = bay[1] - bay[0];
            foreach (var part in width >= TwoScrews ? new[] { 0.25, 0.75 } : [0.5])
                yield return new MoldHole(new Point2(bay[0] + (part * width), ScrewHeight), ScrewHole, MoldHoleKind.Screw);
        }
    }

    private static IEnumerable<MoldHole> ClampHoles(ArcPath edge, ArcPath outline, double toward)
    {
        // Clamp holes follow the edge from above the sheer mark, one every ClampSpacing of its length, where there is wood all round them.
        var along = 0.0;
        var next = FirstClamp;
        foreach (var s in edge.Segments())
        {
            for (; next <= along + s.Length; next += ClampSpacing)
            {
                var fraction = (next - along) / s.Length;
                var direction = ArcSegmentDirection(s, fraction);
                var at = s.PointAt(fraction) + (-toward * ClampInset * direction.TurnedLeft);
                if (outline.Contains(at) && outline.DistanceTo(at) >= ClampMargin)
                    yield return new MoldHole(at, ClampHole, MoldHoleKind.Clamp);
            }

            along += s.Length;
        }
    }

    private static Vector2 ArcSegmentDirection(ArcSegment s, double fraction)
    {
        if (s.IsLine)
            return s.StartDirection;
        var radius = s.PointAt(fraction) - s.Center;
        return (s.Bulge > 0 ? 1 : -1) * radius.TurnedLeft.Unit();
    }

    // The inside of an end at a half-breadth, from above the sheer to a station.
    private sealed record Profile(InsetSection Cut, double SheerMark)
    {
        public static bool TryCut(MoldShaping shaping, bool bow, double x, double halfBreadth, out Profile? profile, out FormattableString reason)
        {
            profile = null;
            var upward = MoldShaping.RunOn + (2 * shaping.Skin.Thickness) + halfBreadth;
            if (!InsetSection.TryCut(
                shaping.Skin, Plane.AtY(halfBreadth), SheerU(shaping, bow, halfBreadth), 1, upward, p => bow ? x - p.Point.X : p.Point.X - x, out var cut, out reason,
                () => shaping.OnBottom(x, halfBreadth)))
            {
                return false;
            }

            reason = $"its edge does not reach the sheer";
            if (cut!.Where(p => p.Point.Z - shaping.SheerAt(p.Point.X)) is not { } mark)
                return false;
            profile = new Profile(cut, mark);
            return true;
        }

        // From the end of the run-on to the station.
        public ArcPath On(MoldFrame frame, double tolerance) => MoldShaping.Fitted(
            Cut, Math.Max(0, SheerMark - MoldShaping.RunOn), Cut.Length, p => new DirectedPoint(frame.ToDrawing(p.Point), frame.ToDrawing(p.Down)), tolerance);
    }

    // A slot from the foot up for a station mold: its wall at the labeled face stands on the station line, the other is easy.
    private sealed record Slot(Mold Of)
    {
        private double Other => Of.Foot.Fore + (Of.Face.StockSide() * (Of.Stock + Lap.Clearance));

        public double Low => Math.Min(Of.Foot.Fore, Other);

        public double High => Math.Max(Of.Foot.Fore, Other);

        public double Floor => Of.LapFloor!.Value + Lap.Clearance;

        public IEnumerable<Point2> Corners(bool bow)
        {
            var (first, last) = bow ? (High, Low) : (Low, High);
            return [new Point2(first, 0), new Point2(first, Floor), new Point2(last, Floor), new Point2(last, 0)];
        }
    }
}
