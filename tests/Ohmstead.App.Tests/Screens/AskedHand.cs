using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Ohmstead.App.Components;
using Ohmstead.App.Screens.Types;

namespace Ohmstead.App.Tests.Screens;

/// <summary>A hand that answers the questions about a type, and counts taps and characters as a browser would see them.</summary>
internal sealed class AskedHand(OpenWorkshop workshop, string type)
{
    private IRenderedComponent<AskType> screen = null!;

    /// <summary>Taps so far; a box is tapped before it is typed into.</summary>
    public int Taps { get; private set; }

    /// <summary>Characters typed so far.</summary>
    public int Characters { get; private set; }

    private string At => new Uri(workshop.Screens.Services.GetRequiredService<NavigationManager>().Uri).AbsolutePath;

    /// <summary>Opens the question that the address is at.</summary>
    public void See()
    {
        screen = workshop.Screens.Render<AskType>(p => p.Add(s => s.KindId, type).Add(s => s.Question, At.Split('/')[^1]));
        screen.WaitForElement("form button.do");
    }

    /// <summary>The question that is asked.</summary>
    public string Title => screen.Find("h1").TextContent;

    /// <summary>Types into a box.</summary>
    public AskedHand Type(string id, string text)
    {
        screen.Do(() => screen.Find($"#a-{id}").Change(text));
        Taps++;
        Characters += text.Length;
        return this;
    }

    /// <summary>Taps an answer by its words.</summary>
    public AskedHand Choose(string words)
    {
        screen.Do(() =>
        {
            var answer = screen.FindAll("label.answer").Single(a => a.QuerySelector("b")!.TextContent == words).QuerySelector("input")!;
            answer.Change(answer.GetAttribute("value"));
        });
        Taps++;
        return this;
    }

    /// <summary>Taps a button that adds to the question.</summary>
    public AskedHand Press(string words)
    {
        screen.Do(() => screen.FindAll("button").Single(b => b.TextContent.Trim() == words).Click());
        Taps++;
        return this;
    }

    /// <summary>Taps the copper button, and is at the question with these words in its title.</summary>
    public AskedHand Next(string title)
    {
        var from = At;
        screen.Do(() => screen.Find("form").Submit());
        screen.WaitForAssertion(() => Assert.True(At != from, screen.Markup));
        Taps++;
        See();
        Assert.Contains(title, Title, StringComparison.Ordinal);
        return this;
    }

    /// <summary>Taps the copper button of the last question: the type is made.</summary>
    public void Make()
    {
        screen.Do(() => screen.Find("form").Submit());
        screen.WaitForAssertion(() => Assert.StartsWith($"/kinds/{type}", At, StringComparison.Ordinal));
        screen.WaitForAssertion(() => Assert.DoesNotContain("/ask/", At, StringComparison.Ordinal));
        Taps++;
    }

    /// <summary>Types a reading and Enter, and taps the next one.</summary>
    public void Read(string shown)
    {
        Taps += 2;
        Characters += shown.Length;
    }
}
