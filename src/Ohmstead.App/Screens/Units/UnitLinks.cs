using Ohmstead.Workshop.Journal;
using Ohmstead.Workshop.Units;

namespace Ohmstead.App.Screens.Units;

/// <summary>Where the next thing on a unit is done.</summary>
internal static class UnitLinks
{
    /// <summary>The screen on which the next thing is done.</summary>
    public static string Of(Guid id, NextThing next) =>
        next.Action switch
        {
            NextAction.NameKind or NextAction.LookOver => $"/units/{id}/look-over",
            NextAction.TakeReading => $"/units/{id}/reading/{Uri.EscapeDataString(next.About)}",
            NextAction.CheckWiring => $"/units/{id}/check",
            NextAction.JudgeFindings or NextAction.Repair => $"/units/{id}/findings",
            NextAction.TakeApart => $"/units/{id}/apart/step",
            NextAction.PutBack => $"/units/{id}/apart/back",
            NextAction.MakePaper => $"/units/{id}/papers",
            _ => $"/units/{id}",
        };

    /// <summary>The screen of a stage.</summary>
    public static string Of(Guid id, Stage stage) =>
        stage switch
        {
            Stage.LookOver => $"/units/{id}/look-over",
            Stage.Readings => $"/units/{id}/reading",
            Stage.Findings => $"/units/{id}/findings",
            Stage.Wiring => $"/units/{id}/wiring",
            Stage.TakingApart => $"/units/{id}/apart",
            _ => $"/units/{id}/papers",
        };
}
