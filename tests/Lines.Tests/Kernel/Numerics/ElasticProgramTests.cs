using System.Buffers;
using Lines.Kernel.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Xunit;

namespace Lines.Tests.Kernel.Numerics;

/// <summary>Least squares with equations and elastic bounds.</summary>
public class ElasticProgramTests
{
    private const int Unknowns = 40, Equations = 7;

    // Outside: MathNet's LU of the optimality conditions of an equality-constrained quadratic.
    [Fact]
    public void Without_bounds_it_is_the_solution_of_the_optimality_conditions()
    {
        var (h, f, c, d) = Problem();
        using var program = Program(h, f, c, d);
        var whole = Matrix<double>.Build.Dense(Unknowns + Equations, Unknowns + Equations);
        whole.SetSubMatrix(0, 0, h);
        whole.SetSubMatrix(0, Unknowns, c.Transpose());
        whole.SetSubMatrix(Unknowns, 0, c);
        var exact = whole.LU().Solve(Vector<double>.Build.DenseOfEnumerable(f.Concat(d)));
        var found = program.Solve([]).X;
        for (var k = 0; k < Unknowns; k++)
            Assert.InRange(found[k] - exact[k], -1e-9, 1e-9);
    }

    // By hand: ½ (x - 3)² + ½ w (x - 1)² is least at (3 + w) / (1 + w), and a bound at 4 costs nothing.
    [Theory]
    [InlineData(1, 9, 1.2)]
    [InlineData(4, 9, 3)]
    public void A_bound_gives_way_by_what_it_costs(double bound, double weight, double least)
    {
        using var program = new ElasticProgram(1);
        var x = new SparseRow([0], [1]);
        program.AddSquare(x, 3, 1);
        Assert.Equal(least, program.Solve([new ElasticRow(x, bound, weight)]).X[0], 1e-12);
    }

    // Rooms are lent: what the last to have them left there must not show.
    [Fact]
    public void It_comes_to_the_same_bits_in_a_room_that_held_something_else()
    {
        double[] first = Solved(), again;
        for (var k = 0; k < 64; k++)
            Spoil(1 << (k % 16));
        again = Solved();
        Assert.Equal(first, again);

        static void Spoil(int count)
        {
            double[][] rooms = [.. Enumerable.Range(0, 12).Select(_ => ArrayPool<double>.Shared.Rent(count))];
            foreach (var room in rooms)
            {
                Array.Fill(room, double.NaN);
                ArrayPool<double>.Shared.Return(room);
            }
        }

        static double[] Solved()
        {
            var (h, f, c, d) = Problem();
            using var program = Program(h, f, c, d);
            var bounds = Enumerable.Range(0, Unknowns).Select(k => new ElasticRow(new SparseRow([k], [1]), 0.01, 1e4)).ToList();
            var start = program.Solve(bounds).X;
            return program.Solve(bounds, start, hold: 0.5).X;
        }
    }

    private static ElasticProgram Program(Matrix<double> h, double[] f, Matrix<double> c, double[] d)
    {
        var program = new ElasticProgram(Unknowns);
        for (var i = 0; i < Unknowns; i++)
        {
            program.AddSquare(new SparseRow([i], [1]), f[i], 1);
            for (var j = 0; j < Unknowns; j++)
                program.AddCurvature(i, j, h[i, j] - (i == j ? 1 : 0));
        }

        for (var r = 0; r < Equations; r++)
            program.AddEquation(SparseRow.Full([.. c.Row(r)]), d[r]);
        return program;
    }

    private static (Matrix<double> H, double[] F, Matrix<double> C, double[] D) Problem()
    {
        var chance = new Random(5);
        var root = Matrix<double>.Build.Dense(Unknowns, Unknowns, (_, _) => chance.NextDouble() - 0.5);
        var h = (root.TransposeThisAndMultiply(root) + Matrix<double>.Build.DenseIdentity(Unknowns)) * 2;
        return (h, [.. Enumerable.Range(0, Unknowns).Select(_ => chance.NextDouble())], Matrix<double>.Build.Dense(Equations, Unknowns, (_, _) => chance.NextDouble() - 0.5), [.. Enumerable.Range(0, Equations).Select(_ => chance.NextDouble())]);
    }
}
