using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lines.Kernel.Numerics;

/// <summary>Sums of products whose last bit is the same on every processor.</summary>
/// <remarks>
/// <b>Method.</b> Sixteen running sums, so that no addition waits for the one before, added up at the end in one order, multiplied and added
/// without fusing. The widest registers a processor has would take the terms in another order, and the same design would give other last
/// digits on another machine.
/// </remarks>
public static class InnerProduct
{
    /// <summary>Σ aᵢ bᵢ.</summary>
    /// <param name="a">The one vector.</param>
    /// <param name="b">The other, as long.</param>
    /// <exception cref="ArgumentException">They are not of one length.</exception>
    public static double Of(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        if (a.Length != b.Length)
            throw new ArgumentException(Invariant($"{b.Length} members beside {a.Length}"), nameof(b));
        ReadOnlySpan<Vector256<double>> va = MemoryMarshal.Cast<double, Vector256<double>>(a), vb = MemoryMarshal.Cast<double, Vector256<double>>(b);
        Vector256<double> first = default, second = default, third = default, fourth = default;
        var fours = va.Length - (va.Length % 4);
        for (var i = 0; i < fours; i += 4)
        {
            first += va[i] * vb[i];
            second += va[i + 1] * vb[i + 1];
            third += va[i + 2] * vb[i + 2];
            fourth += va[i + 3] * vb[i + 3];
        }

        for (var i = fours; i < va.Length; i++)
            first += va[i] * vb[i];
        var lanes = (first + second) + (third + fourth);
        var sum = (lanes[0] + lanes[1]) + (lanes[2] + lanes[3]);
        for (var i = va.Length * Vector256<double>.Count; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    /// <summary>√Σ aᵢ².</summary>
    /// <param name="a">The vector.</param>
    public static double Norm(ReadOnlySpan<double> a) => Math.Sqrt(Of(a, a));
}
