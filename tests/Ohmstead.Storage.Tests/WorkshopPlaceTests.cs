namespace Ohmstead.Storage.Tests;

/// <summary>Which database it is: the command line, then the environment, then the setting; and no password where others can read it.</summary>
public sealed class WorkshopPlaceTests : IDisposable
{
    private const string One = "Host=one;Database=trains",
        Two = "Host=two;Database=trains",
        Three = "Host=three;Database=trains";

    private readonly TempFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(One, Two, true, One)]
    [InlineData(null, Two, true, Two)]
    [InlineData(null, null, true, Three)]
    [InlineData(null, "", false, null)]
    [InlineData("none", Two, true, null)]
    [InlineData(null, "none", true, null)]
    public void The_command_line_goes_before_the_environment_and_that_before_the_setting(
        string? asked,
        string? environment,
        bool isSet,
        string? found
    )
    {
        if (isSet)
            new WorkshopPlace(folder.Path, Three).Remember();
        Assert.Equal(found, WorkshopPlace.Find(folder.Path, asked, environment).Database);
    }

    [Theory]
    [InlineData("Host=one;Database=trains;Password=secret")]
    [InlineData("Host=one;Database=trains;PWD=secret")]
    [InlineData("Host=one;Database=trains;psw = secret")]
    [InlineData("Host=one;Database=trains;SSL Password=secret")]
    [InlineData("Host=one;Database=trains;sslpassword=secret")]
    public void No_password_is_taken_where_others_can_read_it_or_written_down(string address)
    {
        var asked = Assert.Throws<StoreUnusable>(() => WorkshopPlace.Find(folder.Path, address, null));
        Assert.Contains(".pgpass", asked.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", asked.Message, StringComparison.Ordinal);
        Assert.Throws<StoreUnusable>(() => new WorkshopPlace(folder.Path, address).Remember());
        Assert.Throws<StoreUnusable>(() => new WorkshopPlace(folder.Path, address).CheckCanBeRemembered());
        Assert.False(File.Exists(folder.Of(WorkshopPlace.Setting)));
        File.WriteAllText(folder.Of(WorkshopPlace.Setting), address);
        Assert.Throws<StoreUnusable>(() => WorkshopPlace.Find(folder.Path, null, null));
        // The environment is the person's own, as PGPASSWORD is; it is never shown.
        Assert.Equal("the database trains on one", WorkshopPlace.Find(folder.Path, null, address).ToString());
    }

    [Fact]
    public void A_folder_without_a_setting_is_the_workshop_itself() =>
        Assert.Equal(folder.Path, WorkshopPlace.Find(folder.Path, null, null).ToString());
}
