namespace Ohmstead.Workshop.Drawing;

/// <summary>
/// What of a network lies on some way from one place to another: with both places joined, these are the parts that cannot be
/// cut off by taking out one place (the block of that joint, after Hopcroft and Tarjan).
/// </summary>
internal sealed class PathBlock
{
    private readonly IReadOnlyList<(string Id, string A, string B)> _parts;
    private readonly Dictionary<string, List<int>> _at = new(StringComparer.Ordinal);
    private readonly Dictionary<string, int> _number = new(StringComparer.Ordinal);
    private readonly Stack<int> _open = [];
    private readonly int _joint;
    private List<int> _block = [];

    private PathBlock(IReadOnlyList<(string Id, string A, string B)> parts, string first, string second)
    {
        (_parts, _joint) = ([.. parts, ("", first, second)], parts.Count);
        for (var n = 0; n < _parts.Count; n++)
            foreach (var end in new[] { _parts[n].A, _parts[n].B })
            {
                if (!_at.TryGetValue(end, out var list))
                    _at[end] = list = [];
                list.Add(n);
            }
    }

    /// <summary>Ids of the parts, in the order in which they were given; parts without one left out.</summary>
    public static IEnumerable<string> Of(IReadOnlyList<(string Id, string A, string B)> parts, string first, string second)
    {
        var search = new PathBlock(parts, first, second);
        search.Visit(first, -1);
        return search._block.Order().Select(n => search._parts[n].Id).Where(id => id.Length > 0).Distinct();
    }

    /// <summary>Visits a place; answers the earliest place that can be reached from it without going back.</summary>
    private int Visit(string at, int by)
    {
        var low = _number[at] = _number.Count;
        foreach (var n in _at[at].Where(n => n != by))
        {
            var to = _parts[n].A == at ? _parts[n].B : _parts[n].A;
            if (_number.TryGetValue(to, out var seen))
            {
                if (seen < _number[at])
                    _open.Push(n);
                low = Math.Min(low, seen);
                continue;
            }
            _open.Push(n);
            var reached = Visit(to, n);
            low = Math.Min(low, reached);
            if (reached >= _number[at])
                Close(n);
        }
        return low;
    }

    private void Close(int last)
    {
        var block = new List<int>();
        int n;
        do block.Add(n = _open.Pop());
        while (n != last);
        if (block.Contains(_joint))
            _block = block;
    }
}
