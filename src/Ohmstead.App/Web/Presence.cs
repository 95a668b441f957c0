using System.Collections.Immutable;

namespace Ohmstead.App.Web;

/// <summary>Who has which unit open in a window of this program, so that two people on one unit know of each other.</summary>
internal sealed class Presence
{
    private readonly Lock door = new();
    private ImmutableList<Place> places = [];

    /// <summary>Somebody came to a unit or left it. Called from any thread.</summary>
    public event Action<Guid>? Changed;

    /// <summary>Somebody opens a unit.</summary>
    /// <param name="who">As the others are told.</param>
    /// <returns>Disposed when they leave it.</returns>
    public IDisposable Open(Guid unitId, string who)
    {
        var place = new Place(this, unitId, who);
        lock (door)
            places = places.Add(place);
        Changed?.Invoke(unitId);
        return place;
    }

    /// <summary>Who else has it open, those that came first first; somebody with two windows once.</summary>
    /// <param name="own">The window that asks: it is left out.</param>
    public ImmutableArray<string> Beside(Guid unitId, IDisposable? own) =>
        [.. places.Where(p => p.UnitId == unitId && !ReferenceEquals(p, own)).Select(p => p.Who).Distinct(StringComparer.Ordinal)];

    private void Leave(Place place)
    {
        bool wasThere;
        lock (door)
        {
            wasThere = places.Contains(place);
            places = places.Remove(place);
        }
        if (wasThere)
            Changed?.Invoke(place.UnitId);
    }

    private sealed class Place(Presence all, Guid unitId, string who) : IDisposable
    {
        public Guid UnitId { get; } = unitId;

        public string Who { get; } = who;

        public void Dispose() => all.Leave(this);
    }
}
