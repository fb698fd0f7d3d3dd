namespace Lines.Plans.LinesPlan;

/// <summary>Places for a row or column of labels: as near to their lines as they go without touching each other.</summary>
internal static class SpreadLabels
{
    /// <summary>Moves places apart.</summary>
    /// <remarks><b>Method.</b> Neighbors that are too close become a group, packed about the mean of its wishes; groups that touch join.</remarks>
    /// <param name="wishes">Where the middles of labels would like to be.</param>
    /// <param name="sizes">Room each label takes along the row, air included.</param>
    /// <returns>Where they go, in the order of the wishes.</returns>
    public static IReadOnlyList<double> Apart(IReadOnlyList<double> wishes, IReadOnlyList<double> sizes)
    {
        var order = Enumerable.Range(0, wishes.Count).OrderBy(i => wishes[i]).ToList();
        var groups = new List<Group>();
        foreach (var i in order)
        {
            groups.Add(new Group([i], wishes[i] - (sizes[i] / 2), sizes[i]));
            while (groups.Count > 1 && groups[^1].Start < groups[^2].Start + groups[^2].Size)
            {
                var joined = Packed([.. groups[^2].Members, .. groups[^1].Members]);
                groups.RemoveRange(groups.Count - 2, 2);
                groups.Add(joined);
            }
        }

        var places = new double[wishes.Count];
        foreach (var group in groups)
        {
            var at = group.Start;
            foreach (var i in group.Members)
            {
                places[i] = at + (sizes[i] / 2);
                at += sizes[i];
            }
        }

        return places;

        // Each member's wish says where the group should start; their mean is the least-squares answer.
        Group Packed(List<int> members)
        {
            double before = 0, start = 0;
            foreach (var i in members)
            {
                start += wishes[i] - before - (sizes[i] / 2);
                before += sizes[i];
            }

            return new Group(members, start / members.Count, before);
        }
    }

    /// <summary>Equal labels moved apart.</summary>
    public static IReadOnlyList<double> Apart(IReadOnlyList<double> wishes, double size) => Apart(wishes, [.. wishes.Select(_ => size)]);

    private sealed record Group(List<int> Members, double Start, double Size);
}
