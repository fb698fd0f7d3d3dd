using Lines.Construction.Pieces;
using Lines.Kernel.Geometry;

namespace Lines.Construction.Molds;

/// <summary>The pattern of a transom: its after face in true shape, inside of the planking.</summary>
/// <remarks>
/// <para><b>Method.</b> The section of the inset skin by the transom's own plane, so the planking is deducted square in space. The sides run on
/// past the sheer like a mold's and the top is left straight between them: what stands above the sheer is the builder's to shape. Of a closed hull it ends
/// under the crowned deck, as bulkheads do (<see cref="DeckUnderside"/>), so that one deck lies fair over all of them.</para>
/// <para>The planking crosses the edge at a bevel: sin β = n · m, n the skin's normal, m the plane's. It makes the fore face the larger.</para>
/// </remarks>
internal static class TransomPattern
{
    private const int BevelPlaces = 64;

    /// <summary>Shapes the pattern.</summary>
    /// <exception cref="NoEdgeException">The planking does not reach the transom's plane.</exception>
    public static Mold Shape(MoldShaping shaping)
    {
        var plane = shaping.Hull.Transom ?? throw new ArgumentException("the hull has no transom", nameof(shaping));
        Vector3 m = plane.Normal, up = new(m.Z, 0, -m.X);
        // Where the plane meets the level of the strongback top, on the centerplane.
        var top = shaping.Strongback.Top;
        var origin = new Point3((plane.Offset - (m.Z * top)) / m.X, 0, top);
        var frame = new MoldFrame(origin, new Vector3(0, -1, 0), up);
        if (shaping.OnSheer(0.5, 1.2, p => plane.DistanceTo(p.Point)) is not { } u)
            throw new NoEdgeException($"the inside of the planking does not reach its plane at the sheer");
        if (!CrossSection.TryCut(shaping, plane, frame, u, out var section, out var reason))
            throw new NoEdgeException(reason);

        var under = shaping.Hull.Deck is { } deck ? DeckUnderside.AtTransom(deck, shaping.Build.DeckThickness, plane).Over(section!, frame) : null;
        var side = section!.EdgeBetween(under?.End ?? section.Top, section.Bottom);
        var edge = under is { } over ? ArcPaths.Joined([over.Arc, side], closed: false, MoldShaping.Coincident) : side;
        var bevels = section.Below(BevelPlaces).Select(p => Math.Asin(p.Normal.Dot(m))).ToList();
        var keel = section.PointAtKeel();
        double foot = shaping.Strongback.DistanceTo(frame.ToHull(keel).X), sheer = shaping.Strongback.DistanceTo(frame.ToHull(section.PointAt(section.SheerMark)).X);
        return new Mold
        {
            Kind = MoldKind.Transom,
            Number = 0,
            X = frame.ToHull(section.PointAt(section.SheerMark)).X,
            Face = MoldFace.Stern,
            Frame = frame,
            Outline = ArcPaths.Joined([edge, ArcPaths.Mirrored(edge)], closed: true, MoldShaping.Coincident),
            Marks =
            [
                .. section.Waterlines(shaping, section.Keel.Point.Z), .. under is null ? section.SheerMarks() : [],
                new MoldMark(MoldMarkKind.Centerline, "CL", ArcPath.Line(new Point2(0, edge.Vertices[0].Point.Y), keel), null),
            ],
            Holes = [],
            Heights = section.HeightsOverStrongback(shaping),
            Stock = shaping.Build.BulkheadStock,
            Planking = shaping.Skin.Thickness,
            Bevels = section.BevelsTo(section.Bottom),
            Bevel = (bevels.Min(), bevels.Max()),
            Foot = (Math.Min(foot, sheer), Math.Max(foot, sheer)),
        };
    }
}
