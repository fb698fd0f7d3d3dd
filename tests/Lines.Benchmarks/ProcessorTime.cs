namespace Lines.Benchmarks;

/// <summary>Processor time of work on one thread, warm: what else the machine does is not in it.</summary>
internal static class ProcessorTime
{
    /// <summary>Runs before the first that counts: what is compiled while it runs is not the work's.</summary>
    private const int Warm = 20;

    /// <summary>The median of repeated runs [ms].</summary>
    /// <typeparam name="T">What the work gives.</typeparam>
    /// <param name="work">The work.</param>
    /// <param name="repeats">Runs that count; a single one is not warmed up.</param>
    public static double Of<T>(Func<T> work, int repeats)
    {
        for (var k = 0; k < Warm && repeats > 1; k++)
            _ = work();
        var times = new List<double>();
        for (var k = 0; k < repeats; k++)
        {
            var before = Environment.CpuUsage.TotalTime;
            _ = work();
            times.Add((Environment.CpuUsage.TotalTime - before).TotalMilliseconds);
        }

        return times.Order().ElementAt(repeats / 2);
    }
}
