using System.Globalization;
using Lines.Design;
using Lines.Hull.Form;
using Lines.Hull.Hydrostatics;
using Lines.Kernel.Geometry;

namespace Lines.Benchmarks;

/// <summary>How long a boat takes to be floated and heeled, beside a straightforward dense quadrature of the same integrals.</summary>
internal static class FloatTimes
{
    /// <summary>Prints a table: medians of the processor time of repeated runs in one process, one thread, warm.</summary>
    /// <param name="folder">Folder of designs; each main hull floats between two closed copies of itself, 0.65 as long and 0.3 as broad and deep.</param>
    /// <param name="repeats">Runs of each.</param>
    public static void Print(string folder, int repeats)
    {
        Console.WriteLine("| design, three hulls | integrals [ms] | relative error | dense [ms] | its error | equilibrium [ms] | 37 righting arms [ms] |");
        Console.WriteLine("|---|---:|---:|---:|---:|---:|---:|");
        foreach (var file in Directory.EnumerateFiles(folder, "*.toml").Order(StringComparer.Ordinal))
        {
            var hull = HullShape.Solve(DesignFile.Read(File.ReadAllBytes(file), file).Design!.Vessel.MainHull).Surface!;
            PlacedHull[] hulls = [new("main hull", hull, default), Float(hull, -1), Float(hull, 1)];
            var craft = new Craft([.. hulls.Select(FloatingBody.Of)]);
            var weight = new Weight(1000 * 1.05 * UprightHydrostatics.Below(hull, hull.Draft, 1e-6).Volume, new Point3(hull.Dials.Length * 0.52, 0.02, hull.Dials.Depth * 0.8));
            var afloat = Equilibrium.AtHeel(craft, weight, 1000, new WaterPlane(0, 0, 0.15))!;
            var water = afloat.Water;
            var exact = craft.Below(water, 1e-15).Volume;
            double fine = ProcessorTime.Of(() => craft.Below(water, 1e-6), repeats), dense = ProcessorTime.Of(() => Dense(hulls, water), repeats);
            var equilibrium = ProcessorTime.Of(() => Equilibrium.Free(craft, weight, 1000, default), repeats);
            var arms = ProcessorTime.Of(() => new RightingArms(craft, weight, 1000, toPort: false), repeats);
            string[] cells =
            [
                Path.GetFileNameWithoutExtension(file), Told(fine, "F2"), Told(Math.Abs((craft.Below(water, 1e-6).Volume / exact) - 1), "E0"), Told(dense, "F1"),
                Told(Math.Abs((Dense(hulls, water) / exact) - 1), "E0"), Told(equilibrium, "F2"), Told(arms, "F1"),
            ];
            Console.WriteLine($"| {string.Join(" | ", cells)} |");
        }
    }

    private static PlacedHull Float(HullSurface hull, int side)
    {
        var poles = new Point3[hull.Side.U.Count, hull.Side.V.Count];
        for (var i = 0; i < hull.Side.U.Count; i++)
        {
            for (var j = 0; j < hull.Side.V.Count; j++)
            {
                var p = hull.Side.PoleAt(i, j);
                poles[i, j] = new Point3(0.65 * p.X, 0.3 * p.Y, 0.3 * p.Z);
            }
        }

        var surface = new HullSurface(new(hull.Side.U, hull.Side.V, poles), hull.Dials with { Crown = 0.02, Draft = 0.3 * hull.Draft }, hull.WidestU, hull.WaterlineV);
        return new PlacedHull("outrigger", surface, new Vector3(0.9, 1.1 * side, 0.06));
    }

    // Volume by columns of water over a fine grid of every patch, what stands above the plane counted as nothing: the sum a first attempt makes.
    private static double Dense(IEnumerable<PlacedHull> hulls, WaterPlane water)
    {
        const int N = 200;
        double sum = 0;
        foreach (var hull in hulls)
        {
            foreach (var patch in hull.Surface.Patches)
            {
                for (var i = 0; i < N; i++)
                {
                    for (var j = 0; j < N; j++)
                    {
                        var jet = patch.JetAt((i + 0.5) / N, (j + 0.5) / N);
                        var normal = jet.V.Cross(jet.U);
                        sum += Column(jet.Point + hull.Place, normal) + Column((jet.Point with { Y = -jet.Point.Y }) + hull.Place, normal with { Y = -normal.Y });
                    }
                }
            }
        }

        return sum / (N * N);

        double Column(Point3 p, Vector3 normal) => water.Up.Dot(normal) * Math.Min(0, water.HeightOf(p));
    }

    private static string Told(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
