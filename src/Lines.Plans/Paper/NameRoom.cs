using Lines.Drawing.Model;
using Lines.Kernel.Geometry;

namespace Lines.Plans.Paper;

/// <summary>Names added to a page where nothing stands yet.</summary>
/// <param name="room">Where names may stand.</param>
/// <param name="taken">What the page's lettering takes.</param>
/// <param name="isFree">Whether no line of the part runs in a box.</param>
internal sealed class NameRoom(Box2 room, IEnumerable<Box2> taken, Func<Box2, bool> isFree)
{
    /// <summary>What must be free around a name [mm].</summary>
    private const double Clearance = 0.6;

    private readonly List<Box2> _taken = [.. taken];
    private readonly List<TextMark> _names = [];

    /// <summary>The names added.</summary>
    public IReadOnlyList<TextMark> Names => _names;

    /// <summary>Adds a name at the first of its places that is free; nowhere if none is.</summary>
    public void AddAtFirstFree(IEnumerable<TextMark> places)
    {
        foreach (var name in places)
        {
            var box = new PartMark(name).Bounds.Grown(Clearance);
            if (!room.Holds(box) || _taken.Exists(box.Touches) || !isFree(box))
                continue;
            _taken.Add(box);
            _names.Add(name);
            return;
        }
    }
}
