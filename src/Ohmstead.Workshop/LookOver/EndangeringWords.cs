namespace Ohmstead.Workshop.LookOver;

/// <summary>What keeps the mains locked, as it is said to a person.</summary>
public static class EndangeringWords
{
    /// <summary>What is so: "Cord: crumbling, bare wire showing".</summary>
    public static string What(Endangering danger) =>
        danger.State switch
        {
            Danger.NotLookedAt => $"{danger.Item.Title}: not looked at",
            Danger.SignedFor => $"{danger.Item.Title}: not looked at, signed by {danger.SignedBy}",
            _ => $"{danger.Item.Title}: {danger.Seen}",
        };

    /// <summary>What to do about it.</summary>
    public static string Act(Endangering danger) =>
        danger.State switch
        {
            Danger.NotLookedAt => "Look at it, or sign for it.",
            Danger.SignedFor => danger.Why,
            Danger.Found => "Replace it or make it good. Then look again.",
            Danger.SaidGood => "Now it is marked good. Say what was done.",
            _ => "It was replaced or made good. Look again.",
        };
}
