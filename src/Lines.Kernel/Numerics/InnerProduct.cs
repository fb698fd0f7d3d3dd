using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace Lines.Kernel.Numerics;

/// <summary>Sums of products whose last bit is the same on every processor.</summary>
/// <remarks>
/// <b>Method.</b> Four running sums, added up at the end in one order, multiplied and added without fusing. The widest registers a
/// processor has would take the terms in another order, and the same design would give other last digits on another machine.
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
        var lanes = Vector256<double>.Zero;
        for (var i = 0; i < va.Length; i++)
            lanes += va[i] * vb[i];
        var sum = (lanes[0] + lanes[1]) + (lanes[2] + lanes[3]);
        for (var i = va.Length * Vector256<double>.Count; i < a.Length; i++)
            sum += a[i] * b[i];
        return sum;
    }

    /// <summary>√Σ aᵢ².</summary>
    /// <param name="a">The vector.</param>
    public static double Norm(ReadOnlySpan<double> a) => Math.Sqrt(Of(a, a));
}
