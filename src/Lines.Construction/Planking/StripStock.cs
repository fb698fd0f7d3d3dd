using Lines.Kernel.Units;

namespace Lines.Construction.Planking;

/// <summary>The wood to saw strips from.</summary>
/// <param name="Net">Length of all strips as they lie on the hull [m].</param>
/// <param name="Scarfs">Scarfs, both sides.</param>
/// <param name="ScarfLength">Length that scarfs take up [m].</param>
/// <param name="ToBuy">Length to saw, scarfs and waste included [m].</param>
/// <param name="NetBoardFeet">Wood in the hull [board feet].</param>
/// <param name="BoardFeet">Wood to buy, with the saw's kerf, in boards as thick as a strip is wide [board feet].</param>
public sealed record StripStock(double Net, int Scarfs, double ScarfLength, double ToBuy, double NetBoardFeet, double BoardFeet)
{
    /// <summary>Scarfs are this many times as long as the strip is thick: common practice, no source.</summary>
    public const double ScarfRatio = 8;

    /// <summary>A board foot is 144 cubic inches [m³], exact.</summary>
    public const double BoardFoot = 144 * Length.Inch * Length.Inch * Length.Inch;

    /// <summary>The wood for a planking.</summary>
    /// <param name="plan">The strips.</param>
    /// <param name="build">Length of boards, kerf and waste.</param>
    public static StripStock Of(StripPlan plan, BuildDials build)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(build);
        var scarf = ScarfRatio * plan.Thickness;
        var each = plan.Strips.SelectMany(s => s.Lengths).Sum(l => ScarfsIn(l, build.BoardLength, scarf));
        double net = plan.Length, scarfs = 2 * each * scarf, buy = (net + scarfs) * (1 + build.Waste);
        return new StripStock(net, 2 * each, scarfs, buy, net * plan.Width * plan.Thickness / BoardFoot, buy * plan.Width * (plan.Thickness + build.SawKerf) / BoardFoot);
    }

    /// <summary>Scarfs in a strip of a length.</summary>
    /// <param name="length">Length of the strip [m].</param>
    /// <param name="board">Length of the boards it is sawn from [m].</param>
    /// <param name="scarf">Length of a scarf [m], less than the board.</param>
    public static int ScarfsIn(double length, double board, double scarf) => Math.Max(0, (int)Math.Ceiling(((length - board) / (board - scarf)) - 1e-9));
}
