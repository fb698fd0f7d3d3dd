using System.Globalization;
using Lines.Hull.Form;
using Lines.Kernel.Geometry;
using Lines.Kernel.Splines;
using MathNet.Numerics.LinearAlgebra;

namespace Lines.Tests.Support;

/// <summary>The Series 60 parent of CB 0.60 as a surface: the bicubic spline through the published half-breadths [ft].</summary>
/// <remarks>Its lower edge is the flat of bottom at z = 0, a level plane that adds no volume; the upper is the load waterline. Heights go
/// as v²: where a round bilge leaves a flat bottom the half-breadth grows as the root of the height, so as v.</remarks>
internal static class Series60Hull
{
    /// <summary>Length between perpendiculars [ft].</summary>
    public const double Length = 400;

    /// <summary>Breadth [ft].</summary>
    public const double Breadth = 53.3333;

    private static readonly IReadOnlyList<string[]> s_table = ReferenceData.Table("series60_cb060_4210W.csv");

    /// <summary>Places of the published stations from the fore perpendicular [ft].</summary>
    public static double[] Stations { get; } = Numbers(s_table[0]);

    /// <summary>The published areas of the sections as parts of that amidships.</summary>
    public static IReadOnlyList<double> PublishedAreas { get; } =
        [.. ReferenceData.Table("series60_cb060_4210W.original.csv").Skip(1).Take(25).Select(r => Number(r[^1]))];

    /// <summary>The surface.</summary>
    public static HullSurface Surface()
    {
        var rows = s_table.Skip(2).Take(6).ToList();
        var draft = Number(rows[^1][2]);
        double[] along = [.. Stations.Select(x => x / Length)], up = [.. rows.Select(r => Math.Sqrt(Number(r[2]) / draft))];
        SplineBasis u = Through(along), v = Through(up);
        var halfBreadths = Matrix<double>.Build.Dense(along.Length, up.Length, (i, j) => Numbers(rows[j])[i]);

        // y = N P Mᵀ at the places of the table.
        var poles = Collocation(u, along).Solve(Collocation(v, up).Solve(halfBreadths.Transpose()).Transpose());
        var net = new Point3[u.Count, v.Count];
        for (var i = 0; i < u.Count; i++)
        {
            for (var j = 0; j < v.Count; j++)
                net[i, j] = new Point3(Length * u.GrevilleAt(i), poles[i, j], draft * Squared(v, j));
        }

        return new HullSurface(new BSplineSurface(u, v, net), WigleyHull.Dials(Length, Breadth, draft), 0.5, 1);
    }

    // A cubic basis with a function for every place, knots at the means of three neighbors.
    private static SplineBasis Through(double[] places) =>
        SplineBasis.Clamped(3, [0, .. Enumerable.Range(1, places.Length - 4).Select(k => (places[k] + places[k + 1] + places[k + 2]) / 3), 1]);

    // The pole of t²: the mean of the products of three knots two by two.
    private static double Squared(SplineBasis basis, int index)
    {
        double a = basis.Knots[index + 1], b = basis.Knots[index + 2], c = basis.Knots[index + 3];
        return ((a * b) + (b * c) + (c * a)) / 3;
    }

    private static Matrix<double> Collocation(SplineBasis basis, double[] places)
    {
        var rows = Matrix<double>.Build.Dense(places.Length, basis.Count);
        for (var i = 0; i < places.Length; i++)
        {
            var unit = new double[basis.Count];
            for (var j = 0; j < basis.Count; j++)
            {
                Array.Clear(unit);
                unit[j] = 1;
                rows[i, j] = SplineRows.At(basis, places[i], 0).Dot(unit);
            }
        }

        return rows;
    }

    private static double[] Numbers(string[] row) => [.. row.Skip(3).Select(Number)];

    private static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);
}
