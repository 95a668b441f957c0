using Ohmstead.App.Phones;
using Ohmstead.App.Web;

namespace Ohmstead.App.Tests.Phones;

/// <summary>A device stays until its time is over or it is shut out, over a restart too; its secrets are nowhere.</summary>
public sealed class DeviceBookTests : IDisposable
{
    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("ohmstead-devices-");
    private readonly HandClock hand = new();

    public void Dispose() => folder.Delete(recursive: true);

    [Fact]
    public void It_is_found_by_its_cookie_alone_until_its_time_is_over()
    {
        var book = Book();
        var (device, cookie) = book.LetIn(new(null, MayWork: true, TimeSpan.FromDays(7)), " Tablet at the vise ", "key");
        Assert.Equal(("Tablet at the vise", true, true), (device.Name, device.IsBench, device.MayWork));
        Assert.Equal(device, book.Find(cookie));
        Assert.Null(book.Find(device.CookieHash));
        Assert.Null(book.Find(""));
        Assert.Null(book.Find((string?)null));
        hand.Turn(TimeSpan.FromDays(7) - TimeSpan.FromTicks(1));
        Assert.NotNull(book.Find(cookie));
        Assert.NotNull(book.Find(device.Id));
        hand.Turn(TimeSpan.FromTicks(1));
        Assert.Null(book.Find(cookie));
        Assert.Null(book.Find(device.Id));
        Assert.Empty(book.Devices);
    }

    [Fact]
    public void After_a_restart_it_is_still_let_in_and_the_file_holds_no_secret()
    {
        var (device, cookie) = Book().LetIn(new(Guid.NewGuid(), MayWork: true, DeviceBook.PhoneLife), "Phone", "key");
        Assert.Equal(device, Book().Find(cookie));
        var file = File.ReadAllText(Path.Combine(folder.FullName, "network", "devices.json"));
        Assert.DoesNotContain(cookie, file, StringComparison.OrdinalIgnoreCase);
        hand.Turn(DeviceBook.PhoneLife);
        Assert.Null(Book().Find(cookie));
    }

    [Fact]
    public void Shut_out_it_is_not_found_any_more_and_whatever_it_has_open_is_told()
    {
        var book = Book();
        var (first, cookie) = book.LetIn(new(null, true, TimeSpan.FromDays(1)), "", "key");
        var (second, other) = book.LetIn(new(null, true, TimeSpan.FromDays(1)), new string('x', 100), "key");
        Assert.Equal(("A device", DeviceBook.MostLetters), (first.Name, second.Name.Length));
        var ended = new List<Guid>();
        book.ShutOut += ended.Add;
        book.Revoke(first.Id);
        Assert.Equal([first.Id], ended);
        Assert.Null(book.Find(cookie));
        Assert.Equal(second, book.Find(other));
        Assert.Null(Book().Find(cookie));
    }

    [Fact]
    public void What_it_may_do_is_changed_and_remembered()
    {
        var book = Book();
        var (device, cookie) = book.LetIn(new(null, MayWork: false, TimeSpan.FromDays(1)), "Tablet", "key");
        book.Let(device.Id, work: true);
        Assert.True(book.Find(cookie)!.MayWork);
        Assert.True(Book().Find(cookie)!.MayWork);
        var unit = Guid.NewGuid();
        book.Turn(device.Id, unit);
        Assert.Equal(unit, book.Find(cookie)!.UnitId);
    }

    [Fact]
    public void When_it_was_last_seen_is_written_down_by_the_minute()
    {
        var book = Book();
        var (device, _) = book.LetIn(new(null, true, TimeSpan.FromDays(1)), "Tablet", "key");
        var changed = 0;
        book.Changed += () => changed++;
        hand.Turn(TimeSpan.FromSeconds(59));
        book.Saw(device.Id);
        Assert.Equal((device.At, 0), (book.Find(device.Id)!.Seen, changed));
        hand.Turn(TimeSpan.FromSeconds(1));
        book.Saw(device.Id);
        Assert.Equal((hand.GetUtcNow(), 1), (book.Find(device.Id)!.Seen, changed));
    }

    [Fact]
    public void On_a_disk_that_cannot_be_written_shutting_out_ends_what_is_open_all_the_same_and_it_is_told()
    {
        var book = Book();
        var (device, cookie) = book.LetIn(new(null, true, TimeSpan.FromDays(1)), "Tablet", "key");
        var (ended, told) = (new List<Guid>(), 0);
        book.ShutOut += ended.Add;
        book.Changed += () => told++;
        Assert.False(book.IsUnwritten);
        var inTheWay = Directory.CreateDirectory(Path.Combine(folder.FullName, "network", "devices.json.part"));
        book.Revoke(device.Id);
        Assert.Equal([device.Id], ended);
        Assert.Equal((1, true), (told, book.IsUnwritten));
        Assert.Null(book.Find(cookie));
        // What was written last says otherwise.
        Assert.NotNull(Book().Find(cookie));
        inTheWay.Delete();
        book.WriteAgain();
        Assert.False(book.IsUnwritten);
        Assert.Null(Book().Find(cookie));
    }

    [Fact]
    public void On_a_disk_that_cannot_be_written_pages_are_shown_all_the_same()
    {
        var book = Book();
        var (device, _) = book.LetIn(new(null, true, TimeSpan.FromDays(1)), "Tablet", "key");
        Directory.CreateDirectory(Path.Combine(folder.FullName, "network", "devices.json.part"));
        hand.Turn(TimeSpan.FromMinutes(1));
        book.Saw(device.Id);
        Assert.Equal(hand.GetUtcNow(), book.Find(device.Id)!.Seen);
    }

    /// <summary>Whoever listens to the list may break: what is open ends first or last, but ends.</summary>
    [Fact]
    public void A_listener_that_breaks_keeps_nothing_open()
    {
        var book = Book();
        var (device, _) = book.LetIn(new(null, true, TimeSpan.FromDays(1)), "Tablet", "key");
        var ended = new List<Guid>();
        book.ShutOut += ended.Add;
        book.Changed += () => throw new FormatException();
        Assert.Throws<FormatException>(() => book.Revoke(device.Id));
        Assert.Equal([device.Id], ended);
    }

    [Fact]
    public void A_name_that_another_device_has_gets_a_number()
    {
        var book = Book();
        string Named(string name) => book.LetIn(new(null, true, TimeSpan.FromDays(1)), name, "key").Device.Name;
        Assert.Equal(["Tablet", "tablet 2", "Tablet 3"], [Named("Tablet"), Named(" tablet "), Named("Tablet")]);
        var most = new string('x', DeviceBook.MostLetters);
        Assert.Equal([most, $"{most[..^2]} 2"], [Named(most + "y"), Named(most)]);
        book.Revoke(book.Devices.Single(d => d.Name == "Tablet").Id);
        Assert.Equal("Tablet", Named("Tablet"));
    }

    [Fact]
    public async Task A_device_neither_shuts_out_nor_lets_work_nor_turns_another_one()
    {
        var book = Book();
        var (device, _) = book.LetIn(new(null, MayWork: false, TimeSpan.FromDays(1)), "Tablet", "key");
        await Task.Run(
            () =>
            {
                Asker.Begin(new Asker(device.Mark, device.Name, () => true));
                Assert.Throws<NotAllowed>(() => book.Let(device.Id, work: true));
                Assert.Throws<NotAllowed>(() => book.Revoke(device.Id));
                Assert.Throws<NotAllowed>(book.WriteAgain);
                Assert.Throws<NotAllowed>(() => book.Turn(device.Id, Guid.NewGuid()));
            },
            Xunit.TestContext.Current.CancellationToken
        );
        Assert.Equal(device, Assert.Single(book.Devices));
    }

    [Fact]
    public void A_file_that_was_spoiled_lets_nobody_in()
    {
        var (_, cookie) = Book().LetIn(new(null, true, TimeSpan.FromDays(1)), "Tablet", "key");
        File.WriteAllText(Path.Combine(folder.FullName, "network", "devices.json"), "[{");
        Assert.Null(Book().Find(cookie));
    }

    private DeviceBook Book() => new(new NetworkFolder(folder.FullName), hand, Guid.CreateVersion7);
}
