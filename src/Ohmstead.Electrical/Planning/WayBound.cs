namespace Ohmstead.Electrical.Planning;

/// <summary>
/// A cost that no way can be below, by cuts (key helmert-domshlak): while what is to be reached has a price by its dearest
/// chain, every way must buy one of the steps that lead from cheaply reached ones into the zone from which it is free; the
/// cheapest of them is counted and taken off all of them. Steps need all of "after" and, through one of their groups, all of
/// that; a step's price is the dearest of what it needs.
/// </summary>
internal sealed class WayBound(StepTree tree)
{
    private readonly int count = tree.Steps.Length;
    private readonly double[] price = new double[tree.Steps.Length];
    private readonly bool[] zone = new bool[tree.Steps.Length];
    private readonly bool[] outside = new bool[tree.Steps.Length];

    /// <summary>Works the bound out.</summary>
    /// <param name="goals">Steps to be reached.</param>
    public double Of(StepSet goals)
    {
        var (left, bound, order) = ((double[])tree.Costs.Clone(), 0.0, AllInOrder());
        while (true)
        {
            Price(left, order);
            var goal = goals.Steps().MaxBy(g => price[g]);
            if (price[goal] <= 1e-9)
                return bound;
            Mark(goal, left);
            var cheapest = double.PositiveInfinity;
            var cut = new List<int>();
            Reach(order);
            for (var s = 0; s < count; s++)
            {
                if (!zone[s] || left[s] <= 0 || !IsHadOutside(s))
                    continue;
                cut.Add(s);
                cheapest = Math.Min(cheapest, left[s]);
            }
            if (cut.Count == 0)
                return bound;
            bound += cheapest;
            foreach (var s in cut)
                left[s] = left[s] - cheapest < 1e-12 ? 0 : left[s] - cheapest;
        }
    }

    private List<int> AllInOrder()
    {
        var all = tree.Empty;
        for (var s = 0; s < count; s++)
            all.Add(s);
        return tree.Order(all);
    }

    /// <summary>The price of each step by its dearest chain; prices only fall from pass to pass, rings settle.</summary>
    private void Price(double[] left, List<int> order)
    {
        Array.Fill(price, double.PositiveInfinity);
        for (var changed = true; changed; )
        {
            changed = false;
            foreach (var s in order)
            {
                var next = left[s] + Math.Max(Dearest(tree.After[s]), NearestGroup(s));
                if (next < price[s] - 1e-12)
                    (price[s], changed) = (next, true);
            }
        }
    }

    private double Dearest(int[] steps)
    {
        var most = 0.0;
        foreach (var s in steps)
            most = Math.Max(most, price[s]);
        return most;
    }

    private double NearestGroup(int step)
    {
        if (tree.PlainGroups[step].Length == 0)
            return 0;
        var least = double.PositiveInfinity;
        foreach (var group in tree.PlainGroups[step])
            least = Math.Min(least, Dearest(group));
        return least;
    }

    /// <summary>
    /// The zone from which the goal is free: the goal; and, for each free step of the zone, the dearest of what it needs: of
    /// "after", or the dearest of each of its groups.
    /// </summary>
    private void Mark(int goal, double[] left)
    {
        Array.Clear(zone);
        zone[goal] = true;
        var open = new Stack<int>([goal]);
        void Into(int step)
        {
            if (zone[step])
                return;
            zone[step] = true;
            open.Push(step);
        }
        while (open.TryPop(out var s))
        {
            // A step that costs is the edge of the zone: what lies before it is outside, as far as this step goes.
            if (left[s] > 0)
                continue;
            if (HangsOnAfter(s))
                Into(tree.After[s].MaxBy(b => price[b]));
            else
                foreach (var group in tree.PlainGroups[s])
                    Into(group.MaxBy(b => price[b]));
        }
    }

    /// <summary>What can be had from nothing without the zone, each step by the dearest of what it needs.</summary>
    private void Reach(List<int> order)
    {
        Array.Clear(outside);
        for (var changed = true; changed; )
        {
            changed = false;
            foreach (var s in order)
                if (!zone[s] && !outside[s] && IsHadOutside(s))
                    (outside[s], changed) = (true, true);
        }
    }

    private bool IsHadOutside(int step)
    {
        if (tree.After[step].Length + tree.PlainGroups[step].Length == 0)
            return true;
        if (HangsOnAfter(step))
            return outside[tree.After[step].MaxBy(b => price[b])];
        foreach (var group in tree.PlainGroups[step])
            if (outside[group.MaxBy(b => price[b])])
                return true;
        return false;
    }

    /// <summary>True when "after" is the dearer need of a step, false when its groups are.</summary>
    private bool HangsOnAfter(int step) =>
        tree.After[step].Length > 0 && (tree.PlainGroups[step].Length == 0 || Dearest(tree.After[step]) >= NearestGroup(step));
}
