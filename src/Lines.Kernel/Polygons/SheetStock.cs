using Lines.Kernel.Geometry;

namespace Lines.Kernel.Polygons;

/// <summary>Sheets of one size, and how close shapes may lie on them.</summary>
/// <remarks><b>Frame.</b> A sheet lies with its length along the abscissa, its lower left corner at the origin.</remarks>
/// <param name="Length">Length of a sheet, in the unit of the shapes.</param>
/// <param name="Width">Width of a sheet.</param>
/// <param name="Margin">Least distance of a shape from the edges of its sheet.</param>
/// <param name="Spacing">Least distance of two shapes.</param>
/// <param name="Grained">Whether shapes may only be turned end for end; else by any number of quarter turns.</param>
public sealed record SheetStock(double Length, double Width, double Margin, double Spacing, bool Grained)
{
    /// <summary>The quarter turns to the left by which shapes may be turned.</summary>
    public IReadOnlyList<int> Turns => Grained ? [0, 2] : [0, 1, 2, 3];

    /// <summary>Where shapes may lie.</summary>
    public Box2 Room => new(Margin, Margin, Length - Margin, Width - Margin);

    /// <summary>A point turned by quarter turns to the left about the origin, exactly.</summary>
    public static Point2 Turned(Point2 p, int quarters) => (quarters & 3) switch
    {
        0 => p,
        1 => new Point2(-p.Y, p.X),
        2 => new Point2(-p.X, -p.Y),
        _ => new Point2(p.Y, -p.X),
    };
}

/// <summary>Where a shape lies: turned about the origin, then moved.</summary>
/// <param name="Shape">Its index.</param>
/// <param name="Sheet">Index of its sheet.</param>
/// <param name="Quarters">Quarter turns to the left.</param>
/// <param name="Shift">How far it is moved then.</param>
public readonly record struct NestPlace(int Shape, int Sheet, int Quarters, Vector2 Shift)
{
    /// <summary>A point of the shape on its sheet.</summary>
    public Point2 Of(Point2 p) => SheetStock.Turned(p, Quarters) + Shift;
}

/// <summary>Shapes laid on sheets.</summary>
/// <param name="Places">Where they lie, by sheet, on each from the left.</param>
/// <param name="Sheets">Number of sheets begun.</param>
/// <param name="LastLength">Length of the last sheet that is used, its margins included.</param>
/// <param name="TooLarge">Indices of shapes that no sheet holds.</param>
public sealed record SheetNest(IReadOnlyList<NestPlace> Places, int Sheets, double LastLength, IReadOnlyList<int> TooLarge);
