using Ohmstead.App.Queue;
using Ohmstead.Workshop.Days;

namespace Ohmstead.App.Screens.Days;

/// <summary>What is done today, in which order: planned beside the screen, again with every change.</summary>
public sealed partial class BenchDay
{
    private Work? planning;
    private bool isStopped;

    private async Task PlanAsync()
    {
        var (minute, units) = (MinuteOfDay, book!.LeftAt(MinuteOfDay));
        (now, wanted) = (minute, units);
        if (book.Problem.Length > 0)
            return;
        var team = book.TeamAt(minute);
        var mine = Bench.Work.Begin("Bench day", work => DayPlanner.Plan(units, team, DayBudget.Usual, work.Stopped), closed.Token);
        (planning, isStopped) = (mine, false);
        StateHasChanged();
        DayPlan planned;
        try
        {
            planned = await mine.Answer;
        }
        catch (OperationCanceledException) when (!closed.IsCancellationRequested)
        {
            isStopped = planning == mine;
            return;
        }
        finally
        {
            if (planning == mine)
                planning = null;
        }
        // What was changed meanwhile is planned by itself.
        if (!wanted.Equals(units))
            return;
        (left, plan, hours) = (units, planned, book.HoursFrom(minute));
        (hands, waits) = (plan.Tasks.Sum(t => t.To - t.From), plan.Tasks.Sum(t => t.ReadyAt - t.To));
    }
}
