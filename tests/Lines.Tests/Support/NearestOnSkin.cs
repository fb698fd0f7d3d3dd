using Lines.Kernel.Geometry;

namespace Lines.Tests.Support;

/// <summary>Distance of a point from a parametric skin by search alone: a grid, then ever smaller steps. Slow and plain, an oracle.</summary>
internal static class NearestOnSkin
{
    public static double Distance(Func<double, double, Point3> skin, Point3 p, (double Low, double High) u, (double Low, double High) v)
    {
        double bestU = u.Low, bestV = v.Low, best = double.PositiveInfinity;
        const int n = 60;
        for (var i = 0; i <= n; i++)
        {
            for (var j = 0; j <= n; j++)
                Try(u.Low + ((u.High - u.Low) * i / n), v.Low + ((v.High - v.Low) * j / n));
        }

        double du = (u.High - u.Low) / n, dv = (v.High - v.Low) / n;
        while (du > 1e-9)
        {
            var before = best;
            double cu = bestU, cv = bestV;
            for (var i = -2; i <= 2; i++)
            {
                for (var j = -2; j <= 2; j++)
                    Try(Math.Clamp(cu + (i * du / 2), u.Low, u.High), Math.Clamp(cv + (j * dv / 2), v.Low, v.High));
            }

            if (!(best < before))
                (du, dv) = (du / 2, dv / 2);
        }

        return best;

        void Try(double a, double b)
        {
            var d = skin(a, b).DistanceTo(p);
            if (d < best)
                (best, bestU, bestV) = (d, a, b);
        }
    }
}
