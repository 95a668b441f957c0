using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Ohmstead.App.Screens.Units;
using Ohmstead.Workshop.Stores;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A hand that looks again until what it wants to press is there, and presses once.</summary>
public sealed class DoingTests
{
    [Fact]
    public async Task What_a_part_of_the_screen_draws_later_is_waited_for_and_pressed_once()
    {
        await using var context = new BunitContext();
        var whole = context.Render<Whole>();
        var part = whole.FindComponent<Part>().Instance;
        var press = whole.DoAsync(() => whole.Find("button").ClickAsync());
        Assert.False(press.IsCompleted);
        await part.ComeAsync();
        await press;
        Assert.Equal(1, part.Presses);
    }

    /// <summary>The disk is full once: a second press would go through and hide it.</summary>
    [Fact]
    public async Task Where_the_program_breaks_it_is_told_and_not_pressed_again()
    {
        await using var bench = await ScreenBench.OpenAsync(FailingStore.Around);
        var screen = bench.Context.Render<NewUnit>();
        screen.WaitForElement("#type");
        FailingStore.Fail(bench.Bench.Store, nameof(IStore.AppendAsync), FailingStore.FullDisk);
        await Assert.ThrowsAsync<IOException>(() => screen.DoAsync(() => screen.Find("form").SubmitAsync()));
    }

    private sealed class Whole : ComponentBase
    {
        protected override void BuildRenderTree(RenderTreeBuilder builder)
        {
            builder.OpenComponent<Part>(0);
            builder.CloseComponent();
        }
    }

    private sealed class Part : ComponentBase
    {
        private bool isThere;

        public int Presses { get; private set; }

        public Task ComeAsync() =>
            InvokeAsync(() =>
            {
                isThere = true;
                StateHasChanged();
            });

        protected override void BuildRenderTree(RenderTreeBuilder builder)
        {
            if (!isThere)
                return;
            builder.OpenElement(0, "button");
            builder.AddAttribute(1, "onclick", EventCallback.Factory.Create(this, () => Presses++));
            builder.CloseElement();
        }
    }
}
