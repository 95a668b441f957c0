using Ohmstead.Workshop.Shops;

namespace Ohmstead.Workshop.Testing;

/// <summary>Numbers of a form, with the first problem of all of them.</summary>
internal sealed class TypedForm
{
    /// <summary>What is wrong, with the name of its field; empty when nothing is.</summary>
    public string Problem { get; private set; } = "";

    /// <summary>A number of the form.</summary>
    public double Number(string field, string text, double least, double most)
    {
        var (value, problem) = ShopEdit.Number(text, least, most);
        if (problem.Length > 0 && Problem.Length == 0)
            Problem = $"{field}: {problem}";
        return value;
    }
}
