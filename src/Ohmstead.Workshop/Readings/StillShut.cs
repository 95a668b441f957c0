using System.Collections.Immutable;
using Ohmstead.Electrical.Circuits;
using Ohmstead.Electrical.TypeSheets;
using Ohmstead.Workshop.Shops;
using Ohmstead.Workshop.Units;
using Ohmstead.Workshop.Words;

namespace Ohmstead.Workshop.Readings;

/// <summary>The gates of a unit that are still shut.</summary>
public static class StillShut
{
    /// <summary>
    /// Each once, in sheet order: those that another reading waits for, and of a unit without a type all of them, for no mains reading
    /// is there yet to wait. None when its kind, its changes or its readings make no sense (other screens say so).
    /// </summary>
    public static ImmutableArray<ShutGate> Of(BenchUnit unit, TypeSheet? sheet, Shop shop)
    {
        if (sheet is null || OwnSheet.OnBench(unit, sheet, shop) is not { IsSound: true } own)
            return [];
        var model = new UnitModel(own.Value!);
        return BenchReadings.Of(unit, model, shop) is { IsSound: true } readings
            ?
            [
                .. ReadingOffer
                    .All(unit, model, readings.Value!, shop)
                    .SelectMany(o => o.Shut)
                    .Concat(UntypedIds.IsOne(sheet) ? ReadingOffer.ShutIn(unit, model.Sheet, readings.Value!) : [])
                    .DistinctBy(g => g.Gate.Id)
                    .OrderBy(g => own.Value!.Readings.IndexOf(g.Gate)),
            ]
            : [];
    }
}
