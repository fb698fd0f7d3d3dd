using Lines.Kernel.Geometry;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Core;

namespace Lines.Tests.Support;

/// <summary>One drawn path of a PDF page, read by PdfPig.</summary>
/// <param name="Points">Points along it [mm from the page's lower left corner]: its nodes, and seven between the ends of every curve.</param>
/// <param name="Nodes">Its nodes alone.</param>
/// <param name="Closed">Whether it was closed.</param>
/// <param name="Filled">Whether it is filled instead of stroked.</param>
internal sealed record PdfStroke(IReadOnlyList<Point2> Points, IReadOnlyList<Point2> Nodes, bool Closed, bool Filled);

/// <summary>Reads the vector geometry of a PDF.</summary>
internal static class PdfStrokes
{
    private const double MillimetersPerPoint = 25.4 / 72;

    /// <summary>The paths of one page, counted from 1, in drawing order.</summary>
    public static IReadOnlyList<PdfStroke> Of(byte[] pdf, int page)
    {
        using var document = PdfDocument.Open(pdf);
        return [.. document.GetPage(page).Paths.SelectMany(path => path.Select(sub => Read(sub, path.IsFilled)))];
    }

    private static PdfStroke Read(PdfSubpath path, bool filled)
    {
        var points = new List<Point2>();
        var nodes = new List<Point2>();
        var closed = false;
        foreach (var command in path.Commands)
        {
            switch (command)
            {
                case PdfSubpath.Move move:
                    Node(move.Location);
                    break;
                case PdfSubpath.Line line:
                    Node(line.To);
                    break;
                case PdfSubpath.CubicBezierCurve curve:
                    for (var k = 1; k < 8; k++)
                        points.Add(On(curve, k / 8.0));
                    Node(curve.EndPoint);
                    break;
                case PdfSubpath.Close:
                    closed = true;
                    break;
                default:
                    throw new NotSupportedException(command.GetType().Name);
            }
        }

        return new PdfStroke(points, nodes, closed, filled);

        void Node(PdfPoint p)
        {
            nodes.Add(Millimeters(p.X, p.Y));
            points.Add(nodes[^1]);
        }
    }

    private static Point2 On(PdfSubpath.CubicBezierCurve c, double t)
    {
        var (a, b, d, e) = (Math.Pow(1 - t, 3), 3 * t * Math.Pow(1 - t, 2), 3 * t * t * (1 - t), t * t * t);
        return Millimeters(
            (a * c.StartPoint.X) + (b * c.FirstControlPoint.X) + (d * c.SecondControlPoint.X) + (e * c.EndPoint.X),
            (a * c.StartPoint.Y) + (b * c.FirstControlPoint.Y) + (d * c.SecondControlPoint.Y) + (e * c.EndPoint.Y));
    }

    private static Point2 Millimeters(double x, double y) => new(x * MillimetersPerPoint, y * MillimetersPerPoint);
}
