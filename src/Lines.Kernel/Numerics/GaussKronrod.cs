namespace Lines.Kernel.Numerics;

/// <summary>Fifteen nodes of Kronrod over an interval, against the seven of Gauss among them.</summary>
/// <remarks>
/// <b>Accuracy.</b> The fifteen are exact to degree 22, the seven to degree 13, so what they differ by is far more than the error of the fifteen where functions are smooth.
/// <b>Source.</b> A. S. Kronrod, <i>Nodes and Weights of Quadrature Formulas</i>, 1965; the nodes from memory, checked by those degrees.
/// </remarks>
public static class GaussKronrod
{
    // From the end to the middle; every second one is a node of Gauss.
    private static readonly double[] s_nodes =
    [
        0.991455371120812639206854697526329, 0.949107912342758524526189684047851, 0.864864423359769072789712788640926, 0.741531185599394439863864773280788,
        0.586087235467691130294144691258880, 0.405845151377397166906606412076961, 0.207784955007898467600689403773245, 0,
    ];

    private static readonly double[] s_fifteen =
    [
        0.022935322010529224963732008058970, 0.063092092629978553290700663189204, 0.104790010322250183839876322541518, 0.140653259715525918745189590510238,
        0.169004726639267902826583426598550, 0.190350578064785409913256402421014, 0.204432940075298892414161999234649, 0.209482141084727828012999174891714,
    ];

    private static readonly double[] s_seven = [0, 0.129484966168869693270611432679082, 0, 0.279705391489276667901467771423780, 0, 0.381830050505118944950369775488975, 0, 0.417959183673469387755102040816327];

    /// <summary>Integrates functions over an interval.</summary>
    /// <param name="f">The functions.</param>
    /// <param name="from">One end.</param>
    /// <param name="to">The other.</param>
    /// <param name="sums">Receives the integral of each by the fifteen.</param>
    /// <param name="apart">Receives by how much the seven differ from it.</param>
    public static void Over(Integrand f, double from, double to, Span<double> sums, Span<double> apart)
    {
        ArgumentNullException.ThrowIfNull(f);
        Span<double> values = stackalloc double[sums.Length];
        double half = (to - from) / 2, middle = (to + from) / 2;
        sums.Clear();
        apart.Clear();
        for (var i = 0; i < s_nodes.Length; i++)
        {
            foreach (var side in s_nodes[i] == 0 ? (ReadOnlySpan<int>)[0] : [-1, 1])
            {
                f(middle + (side * half * s_nodes[i]), values);
                for (var k = 0; k < sums.Length; k++)
                {
                    sums[k] += half * s_fifteen[i] * values[k];
                    apart[k] += half * (s_fifteen[i] - s_seven[i]) * values[k];
                }
            }
        }

        for (var k = 0; k < apart.Length; k++)
            apart[k] = Math.Abs(apart[k]);
    }
}
