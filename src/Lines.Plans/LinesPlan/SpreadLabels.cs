namespace Lines.Plans.LinesPlan;

/// <summary>Places for a column of labels: as near to their lines as they go without touching each other.</summary>
internal static class SpreadLabels
{
    /// <summary>Moves places apart.</summary>
    /// <remarks><b>Method.</b> Neighbours that are too close become a group, evenly spaced about the mean of its wishes; groups that touch join.</remarks>
    /// <param name="wishes">Where labels would like to be.</param>
    /// <param name="gap">Least distance between two.</param>
    /// <returns>Where they go, in the order of the wishes.</returns>
    public static IReadOnlyList<double> Apart(IReadOnlyList<double> wishes, double gap)
    {
        var order = Enumerable.Range(0, wishes.Count).OrderBy(i => wishes[i]).ToList();
        var groups = new List<(int First, int Count, double Middle)>();
        for (var k = 0; k < order.Count; k++)
        {
            groups.Add((k, 1, wishes[order[k]]));
            while (groups.Count > 1 && groups[^1].Middle - groups[^2].Middle < (groups[^1].Count + groups[^2].Count) * gap / 2)
            {
                var (a, b) = (groups[^2], groups[^1]);
                var count = a.Count + b.Count;
                groups.RemoveRange(groups.Count - 2, 2);
                groups.Add((a.First, count, Enumerable.Range(a.First, count).Average(i => wishes[order[i]])));
            }
        }

        var places = new double[wishes.Count];
        foreach (var (first, count, middle) in groups)
        {
            for (var i = 0; i < count; i++)
                places[order[first + i]] = middle + ((i - ((count - 1) / 2.0)) * gap);
        }

        return places;
    }
}
