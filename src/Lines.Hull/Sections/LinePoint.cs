using Lines.Kernel.Geometry;

namespace Lines.Hull.Sections;

/// <summary>A point of a hull line.</summary>
/// <param name="T">Place along the line: 0 at its start, 1 at its end, by chord length through the nodes.</param>
/// <param name="U">Parameter u of the skin.</param>
/// <param name="V">Parameter v of the skin.</param>
/// <param name="Point">The point, the skin evaluated at (U, V) [m].</param>
public readonly record struct LinePoint(double T, double U, double V, Point3 Point);
