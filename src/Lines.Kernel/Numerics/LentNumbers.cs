using System.Buffers;

namespace Lines.Kernel.Numerics;

/// <summary>Room for many numbers, lent until it is given back: made anew for every problem, arrays this large keep the collector busier than their use.</summary>
internal sealed class LentNumbers : IDisposable
{
    private readonly List<double[]> _lent = [];

    /// <summary>An array at least so long; its members are what somebody left there.</summary>
    public double[] Any(int count)
    {
        var room = ArrayPool<double>.Shared.Rent(count);
        _lent.Add(room);
        return room;
    }

    /// <summary>An array at least so long, its first members zero.</summary>
    public double[] Zeros(int count)
    {
        var room = Any(count);
        Array.Clear(room, 0, count);
        return room;
    }

    /// <summary>Makes an array at least so long; what it held is kept where it is lengthened.</summary>
    public void Lengthen(ref double[] room, int count)
    {
        if (room.Length >= count)
            return;
        var longer = Any(count);
        room.CopyTo(longer, 0);
        if (_lent.Remove(room))
            ArrayPool<double>.Shared.Return(room);
        room = longer;
    }

    public void Dispose()
    {
        foreach (var room in _lent)
            ArrayPool<double>.Shared.Return(room);
        _lent.Clear();
    }
}
