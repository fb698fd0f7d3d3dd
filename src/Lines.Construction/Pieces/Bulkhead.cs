using Lines.Construction.Molds;
using Lines.Kernel.Geometry;
using Lines.Kernel.Units;

namespace Lines.Construction.Pieces;

/// <summary>The two bulkheads of a joint, and bulkheads elsewhere.</summary>
/// <remarks>
/// <para><b>Method.</b> The hull is planked and sheathed whole, the bulkheads are glued in a saw's width apart, and the saw goes between them. Each is the
/// section at its own face of the skin moved in by planking and inner cloth together, square to the skin in space; its stock stands away from the gap.
/// It ends level at the sheer, or under a crowned deck as <see cref="DeckUnderside"/> says. Bolts lie alike in both, as far clear of either edge as <see cref="Clear"/> says.</para>
/// <para><b>Accuracy.</b> Edges as those of molds, <see cref="MoldShaping.FitTolerance"/>.</para>
/// </remarks>
internal static class Bulkhead
{
    /// <summary>Distance of bolts along the edge [m]: common practice, no source.</summary>
    private const double BoltSpacing = 0.150;

    /// <summary>A bolt's middle from the edge, in its diameters, and at least so much [m]: room for the washer beside the fillet.</summary>
    private const double BoltDiameters = 3, LeastClear = 0.030;

    private const double LeastDepth = 0.060;

    private const double LeastOpening = 0.030;

    private const int Places = 96;

    /// <summary>Distance of the middle of a bolt from the edge [m].</summary>
    public static double Clear(BuildDials build) => Math.Max(LeastClear, BoltDiameters * build.JointBolt);

    /// <summary>The bulkheads of all joints, forward one first; those without a section are told.</summary>
    /// <param name="shaping">What shaping molds of the hull needs.</param>
    /// <param name="leftOut">Takes what is not made.</param>
    /// <exception cref="BuildDialException">The opening does not go into a bulkhead.</exception>
    public static IReadOnlyList<Mold> Of(MoldShaping shaping, List<MoldLeftOut> leftOut)
    {
        var build = shaping.Build;
        var inner = Inner(shaping);
        var bulkheads = new List<Mold>();
        foreach (var (joint, number) in build.Joints.Select((x, k) => (x, k + 1)))
        {
            if (TryCut(inner, joint - (build.JointGap / 2), MoldFace.Stern, out var fore, out var reason) && TryCut(inner, joint + (build.JointGap / 2), MoldFace.Bow, out var aft, out reason))
            {
                var holes = Holes(build, fore!.Value, aft!.Value);
                var down = Apart(fore.Value, aft.Value);
                bulkheads.AddRange([Shaped(shaping, inner, number, fore.Value, holes), Shaped(shaping, inner, number, aft.Value, [.. holes.Select(h => h with { At = h.At - down })])]);
            }
            else
            {
                leftOut.Add(new MoldLeftOut(joint, reason) { Key = "joints", Remedy = $"set the joint elsewhere", IsOfJoint = true });
            }
        }

        return bulkheads;
    }

    /// <summary>The bulkheads the file puts elsewhere, labeled face away from midships; those without a section, or without room for their opening, are told.</summary>
    /// <param name="shaping">What shaping molds of the hull needs.</param>
    /// <param name="clashes">Takes what is not made.</param>
    public static IReadOnlyList<Mold> Given(MoldShaping shaping, List<Clash> clashes)
    {
        var build = shaping.Build;
        var inner = Inner(shaping);
        var bulkheads = new List<Mold>();
        for (var k = 0; k < build.Bulkheads.Count; k++)
        {
            var place = build.Bulkheads[k];
            if (!TryCut(inner, place.At, MoldFaces.AwayFromMidships(place.At, shaping.Hull.WidestX), out var cut, out var reason))
            {
                clashes.Add(new Clash(false, k, $"no bulkhead can be cut at {new Length(place.At)}: {reason}"));
                continue;
            }

            IReadOnlyList<MoldHole> holes = [];
            if (place.Opening is { } wanted)
            {
                var (hole, widest) = Opening(wanted, [cut!.Value.Outline], [], Clear(build));
                holes = hole is null ? [] : [hole];
                if (hole is null)
                    clashes.Add(new Clash(false, k, $"its opening of {new Length(wanted)} is left out: the bulkhead takes one of {new Length(Math.Max(0, widest))}"));
            }

            bulkheads.Add(Shaped(shaping, inner, build.Joints.Count + k + 1, cut!.Value, holes) with { Purpose = place.Name });
        }

        return bulkheads;
    }

    private static MoldShaping Inner(MoldShaping shaping) =>
        shaping.Within(shaping.Build with { Planking = shaping.Build.Planking + shaping.Build.Sheathing, MoldStock = shaping.Build.BulkheadStock });

    private static bool TryCut(MoldShaping inner, double x, MoldFace face, out Cut? cut, out FormattableString reason)
    {
        cut = null;
        reason = $"the inside of the planking does not reach it at the sheer";
        if (inner.OnSheer(0, 1, p => p.Point.X - x) is not { } u)
            return false;
        var sheer = inner.SheerAt(x);
        var frame = new MoldFrame(new Point3(x, 0, sheer), new Vector3(0, face.StockSide(), 0), new Vector3(0, 0, -1));
        try
        {
            if (!CrossSection.TryCut(inner, Plane.AtX(x), frame, u, out var section, out reason))
                return false;
            if (!(section!.Sheer - section.Keel.Point.Z >= LeastDepth))
            {
                reason = $"its section is only {new Length(section.Sheer - section.Keel.Point.Z)} deep inside the planking";
                return false;
            }

            var under = inner.Hull.Deck is { } deck ? DeckUnderside.AtStation(deck, inner.Skin.Thickness, x).Over(section, frame) : null;
            cut = new Cut(x, face, frame, section, section.EdgeBetween(under?.End ?? section.SheerMark, section.Bottom), under?.Arc);
            return true;
        }
        catch (NoEdgeException e)
        {
            reason = e.Why;
            return false;
        }
    }

    private static Mold Shaped(MoldShaping shaping, MoldShaping inner, int number, Cut cut, IReadOnlyList<MoldHole> holes)
    {
        var section = cut.Section;
        var distance = shaping.Strongback.DistanceTo(cut.X);
        return new Mold
        {
            Kind = MoldKind.Bulkhead,
            Number = number,
            X = cut.X,
            Face = cut.Face,
            Frame = cut.Frame,
            Outline = cut.Outline,
            Marks =
            [
                .. section.Waterlines(inner, section.Keel.Point.Z),
                new MoldMark(MoldMarkKind.Centerline, "CL", ArcPath.Line(cut.Deck?.Vertices[0].Point ?? new Point2(0, 0), section.PointAtKeel()), null),
            ],
            Holes = holes,
            Heights = section.HeightsOverStrongback(shaping),
            Stock = shaping.Build.BulkheadStock,
            Planking = shaping.Build.Planking,
            Sheathing = shaping.Build.Sheathing,
            Proud = StationMold.Proud(inner, section, section.Bottom, Plane.AtX(cut.X + (cut.Face.StockSide() * shaping.Build.BulkheadStock)), cut.Frame),
            Foot = (distance, distance),
        };
    }

    // From the drawing of the after face to that of the forward one: each has its ordinate 0 at its own sheer.
    private static Vector2 Apart(Cut fore, Cut aft) => new(0, fore.Frame.Origin.Z - aft.Frame.Origin.Z);

    // Bolts and the opening, at one place in the boat for both faces, on the drawing of the forward one.
    private static List<MoldHole> Holes(BuildDials build, Cut fore, Cut aft)
    {
        var down = Apart(fore, aft);
        ArcPath Moved(ArcPath path) => path.Mapped(p => p + down);
        ArcPath[] outlines = [fore.Outline, Moved(aft.Outline)], edges = [fore.Edge, Moved(aft.Edge)];
        var clear = Clear(build);
        var bolts = Bolts(build, edges, p => Room(outlines, p), clear);
        if (build.BulkheadOpening is not { } wanted)
            return bolts;
        var (hole, widest) = Opening(wanted, outlines, bolts, clear);
        return hole is not null
            ? [.. bolts, hole]
            : throw new BuildDialException("bulkhead_opening", Invariant($"it leaves less than {1000 * clear:F0} mm to edge and bolts of a bulkhead"), widest > LeastOpening ? widest : null)
            {
                Remedy = widest > LeastOpening ? null : "leave it out",
            };
    }

    // Along a line as far inside the edge as a bolt must be, from below the sheer to the keel, evenly; the lowest on the centerline where the two sides come near.
    private static List<MoldHole> Bolts(BuildDials build, ArcPath[] edges, Func<Point2, double> room, double clear)
    {
        var line = Inside(edges, room, clear).ToList();
        if (line.Count < 2)
            return [];
        double[] along = [.. line.Select((_, k) => line.Take(k + 1).Zip(line.Skip(1).Take(k), (a, b) => a.DistanceTo(b)).Sum())];
        var count = Math.Max(2, (int)Math.Ceiling(along[^1] / BoltSpacing) + 1);
        var right = Enumerable.Range(0, count).Select(k => line[Array.FindIndex(along, a => a >= (along[^1] * k / (count - 1)) - 1e-9)]);
        return
        [
            .. right.SelectMany(p => p.X < clear ? (Point2[])[p with { X = 0 }] : [p, p with { X = -p.X }]).Where(p => room(p) >= clear - 1e-4)
                .Select(p => new MoldHole(p, build.JointBolt, MoldHoleKind.Bolt)),
        ];
    }

    // In from the shorter edge until the other face leaves room too: over a wide gap the two differ by more than a hair.
    private static IEnumerable<Point2> Inside(ArcPath[] edges, Func<Point2, double> room, double clear)
    {
        const double Slack = 1e-4;
        const int MostSteps = 12;
        var edge = edges.MinBy(e => e.Length())!;
        var top = edges.Max(e => e.Vertices[0].Point.Y);
        var length = edge.Length();
        var segments = edge.Segments();
        for (var k = 0; k <= Places; k++)
        {
            var (at, normal) = PlaceOn(segments, length * k / Places);
            var p = at + (clear * normal);
            for (var step = 0; step < MostSteps; step++)
            {
                if (p.Y < top + clear)
                    p = p with { Y = top + clear + Slack };
                if (room(p) is var left && left >= clear)
                    break;
                p += (clear - left + Slack) * normal;
            }

            if (p.X >= 0 && room(p) >= clear)
                yield return p;
        }
    }

    // A place of an edge and the direction to its left, which is inside: edges run counter-clockwise.
    private static (Point2 At, Vector2 Inward) PlaceOn(IReadOnlyList<ArcSegment> segments, double along)
    {
        foreach (var s in segments)
        {
            if (along <= s.Length || s == segments[^1])
            {
                var t = Math.Clamp(along / s.Length, 0, 1);
                var step = Math.Min(t + 1e-4, 1) is var to && to > t ? s.PointAt(to) - s.PointAt(t) : s.PointAt(t) - s.PointAt(t - 1e-4);
                var d = step.Unit();
                return (s.PointAt(t), new Vector2(-d.Y, d.X));
            }

            along -= s.Length;
        }

        throw new ArgumentException("an edge without segments", nameof(segments));
    }

    private static double Room(ArcPath[] outlines, Point2 p) => outlines.Min(o => o.Contains(p) ? o.DistanceTo(p) : 0);

    // Where most room is on the centerline; edge and bolts keep their distance. The hole is null where that is too little.
    private static (MoldHole? Hole, double Widest) Opening(double wanted, ArcPath[] outlines, List<MoldHole> bolts, double clear)
    {
        var deep = outlines.Min(o => o.Bounds().Top);
        double Radius(double y) => Math.Min(Room(outlines, new Point2(0, y)) - clear, bolts.Select(b => b.At.DistanceTo(new Point2(0, y)) - clear).DefaultIfEmpty(double.PositiveInfinity).Min());
        var best = Enumerable.Range(1, Places - 1).Select(k => deep * k / Places).MaxBy(Radius);
        var widest = 2 * Radius(best);
        return (wanted <= widest ? new MoldHole(new Point2(0, best), wanted, MoldHoleKind.Opening) : null, widest);
    }

    /// <summary>The section at a bulkhead's face.</summary>
    /// <param name="X">Place of the face [m].</param>
    /// <param name="Face">Where the face looks.</param>
    /// <param name="Frame">The drawing.</param>
    /// <param name="Section">The inside of planking and cloth.</param>
    /// <param name="Edge">Its edge from the sheer, or from under the deck, to the centerline.</param>
    /// <param name="Deck">The upper edge under a deck, from the centerline out; null where it is level.</param>
    private readonly record struct Cut(double X, MoldFace Face, MoldFrame Frame, CrossSection Section, ArcPath Edge, ArcPath? Deck)
    {
        public ArcPath Outline { get; } = Whole(Deck is null ? Edge : ArcPaths.Joined([Deck, Edge], closed: false, MoldShaping.Coincident));

        private static ArcPath Whole(ArcPath edge) => ArcPaths.Joined([edge, ArcPaths.Mirrored(edge)], closed: true, MoldShaping.Coincident);
    }
}
