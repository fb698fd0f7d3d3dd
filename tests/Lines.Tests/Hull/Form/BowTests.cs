using Lines.Hull.Form;
using Lines.Tests.Support;
using Xunit;

namespace Lines.Tests.Hull.Form;

/// <summary>A bow's row is its true derivative: what it says of a small change of the net is what the bow then does.</summary>
/// <remarks>Against central differences. Rows that leave out how a diagonal turns with the skin end a descent short of its valley's floor.</remarks>
public class BowTests
{
    public static TheoryData<string> Steps => ["section", "transom", "waterline", "diagonal", "flat diagonal", "buttock"];

    [Theory]
    [MemberData(nameof(Steps))]
    public void The_row_of_a_bow_is_its_derivative(string kind)
    {
        var side = HullShape.Solve(FormDials.TransomBoat).Surface!.Side;
        int nv = side.V.Count, poles = side.U.Count * nv;
        var x = new double[poles];
        var net = new double[2 * poles];
        for (var k = 0; k < poles; k++)
        {
            var pole = side.PoleAt(k / nv, k % nv);
            (x[k], net[k], net[poles + k]) = (pole.X, pole.Y, pole.Z);
        }

        var chance = new Random(7);
        foreach (var (u, v) in kind == "transom" ? [(1, 0.3), (1, 0.8)] : (IEnumerable<(double U, double V)>)[(0.2, 0.1), (0.45, 0.4), (0.8, 0.25), (0.6, 0.9)])
        {
            var sample = new Sample(side.U, side.V, x, u, v);
            Bow At(double[] at)
            {
                var point = new SkinPoint(sample, sample.JetOf(at, poles));
                return Bow.Of(point, StepAt(point, kind), weight: 1);
            }

            double[] way = [.. net.Select(_ => 1e-6 * (chance.NextDouble() - 0.5))];
            var told = At(net).Row(net, poles, new double[Sample.RowLength]).Dot(way);
            var seen = (At([.. net.Zip(way, (a, b) => a + b)]).Depth - At([.. net.Zip(way, (a, b) => a - b)]).Depth) / 2;
            Assert.InRange(told / seen, 1 - 1e-5, 1 + 1e-5);
        }
    }

    private static BowStep StepAt(in SkinPoint point, string kind) => kind switch
    {
        "section" => BowStep.UpSection(point, 0.25),
        "transom" => BowStep.UpTransom(point, 0.25),
        "waterline" => BowStep.AlongWaterline(point, 0.4),
        "diagonal" => BowStep.AlongDiagonal(point, 0.4),
        "flat diagonal" => BowStep.AlongDiagonal(point, 0.4, 0.5),
        _ => BowStep.AlongButtock(point, 0.4),
    };
}
