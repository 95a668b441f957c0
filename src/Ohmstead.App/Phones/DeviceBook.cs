using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using Ohmstead.App.Web;

namespace Ohmstead.App.Phones;

/// <summary>The devices that are let in. They stay over a restart of the tool, until their time is over or they are shut out.</summary>
internal sealed class DeviceBook
{
    /// <summary>How long a phone for one unit stays: a working day.</summary>
    public static readonly TimeSpan PhoneLife = TimeSpan.FromHours(12);

    /// <summary>The longest name that is taken [letters].</summary>
    public const int MostLetters = 40;

    /// <summary>What was last seen is written down no oftener than this.</summary>
    private static readonly TimeSpan SeenStep = TimeSpan.FromMinutes(1);

    private const string File = "devices.json";
    private readonly Lock door = new();
    private readonly NetworkFolder folder;
    private readonly TimeProvider time;
    private readonly Func<Guid> newId;
    private readonly ILogger? log;
    private ImmutableDictionary<string, Device> devices;

    /// <param name="newId">Makes ids.</param>
    /// <param name="log">Where a disk that cannot be written is told; null for nowhere.</param>
    public DeviceBook(NetworkFolder folder, TimeProvider time, Func<Guid> newId, ILogger<DeviceBook>? log = null)
    {
        (this.folder, this.time, this.newId, this.log) = (folder, time, newId, log);
        devices = Read(folder.Read(File)).Where(IsLetIn).ToImmutableDictionary(d => d.CookieHash, StringComparer.Ordinal);
    }

    /// <summary>A device came, went, was seen, or may do something else. Called from any thread.</summary>
    public event Action? Changed;

    /// <summary>A device is let in no more: whatever it has open ends. Called from any thread.</summary>
    public event Action<Guid>? ShutOut;

    /// <summary>
    /// True where the disk could not be written: what was said of the devices holds until the tool is started again, and then what was
    /// written last does.
    /// </summary>
    public bool IsUnwritten { get; private set; }

    /// <summary>The devices that are let in now, first come first.</summary>
    public IReadOnlyList<Device> Devices => [.. devices.Values.Where(IsLetIn).OrderBy(d => d.At).ThenBy(d => d.Id)];

    /// <summary>Lets a device in that knew a code and proved its key.</summary>
    /// <param name="name">As its person calls it; one that another device has gets a number.</param>
    /// <param name="key">The open half of its key, base 64.</param>
    /// <returns>The device with the secret for its cookie.</returns>
    public (Device Device, string Cookie) LetIn(DeviceRights rights, string name, string key)
    {
        var (secret, now) = (Secret.New(), time.GetUtcNow());
        var device = new Device(
            newId(),
            Free(name.Trim() is { Length: > 0 } said ? said : "A device"),
            rights.UnitId,
            rights.MayWork,
            key,
            Secret.Hash(secret)
        )
        {
            At = now,
            Until = now + rights.Life,
            Seen = now,
        };
        Change(all => all.Add(device.CookieHash, device));
        return (device, secret);
    }

    /// <summary>The device whose cookie this is, or null.</summary>
    public Device? Find(string? cookie) =>
        !string.IsNullOrEmpty(cookie) && devices.TryGetValue(Secret.Hash(cookie), out var device) && IsLetIn(device) ? device : null;

    /// <summary>The device as it stands now; null when it is let in no more.</summary>
    public Device? Find(Guid id) => devices.Values.FirstOrDefault(d => d.Id == id && IsLetIn(d));

    /// <summary>It proved just now that it is the one.</summary>
    public void Saw(Guid id)
    {
        var now = time.GetUtcNow();
        if (Find(id) is { } device && now - device.Seen >= SeenStep)
            Replace(id, d => d with { Seen = now });
    }

    /// <summary>Gives a phone another unit to see.</summary>
    /// <exception cref="NotAllowed">A device asks.</exception>
    public void Turn(Guid id, Guid unitId)
    {
        Asker.MustBeHere();
        Replace(id, d => d with { UnitId = unitId });
    }

    /// <summary>Lets a bench work, or only look.</summary>
    /// <exception cref="NotAllowed">A device asks.</exception>
    public void Let(Guid id, bool work)
    {
        Asker.MustBeHere();
        Replace(id, d => d with { MayWork = work });
    }

    /// <summary>Shuts a device out, at once and for good.</summary>
    /// <exception cref="NotAllowed">A device asks.</exception>
    public void Revoke(Guid id)
    {
        Asker.MustBeHere();
        try
        {
            Replace(id, _ => null);
        }
        finally
        {
            ShutOut?.Invoke(id);
        }
    }

    /// <summary>Writes down what could not be written before.</summary>
    /// <exception cref="NotAllowed">A device asks.</exception>
    public void WriteAgain()
    {
        Asker.MustBeHere();
        Change(all => all);
    }

    /// <summary>The name, with a number where a device that is let in has it.</summary>
    private string Free(string name)
    {
        for (var n = 1; ; n++)
        {
            var number = n == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $" {n}");
            var free = name[..Math.Min(name.Length, MostLetters - number.Length)].TrimEnd() + number;
            if (!Devices.Any(d => string.Equals(d.Name, free, StringComparison.OrdinalIgnoreCase)))
                return free;
        }
    }

    private void Replace(Guid id, Func<Device, Device?> by) =>
        Change(all =>
        {
            foreach (var (hash, device) in all.Where(d => d.Value.Id == id))
                all = by(device) is { } other ? all.SetItem(hash, other) : all.Remove(hash);
            return all;
        });

    private void Change(Func<ImmutableDictionary<string, Device>, ImmutableDictionary<string, Device>> change)
    {
        lock (door)
        {
            var kept = devices.RemoveRange(devices.Where(d => !IsLetIn(d.Value)).Select(d => d.Key));
            devices = change(kept);
            Write();
        }
        Changed?.Invoke();
    }

    /// <summary>A disk that is full, or cannot be written, keeps no device in and no page from being shown: it is told.</summary>
    private void Write()
    {
        try
        {
            folder.Write(File, JsonSerializer.SerializeToUtf8Bytes(devices.Values.OrderBy(d => d.At).ThenBy(d => d.Id)));
            IsUnwritten = false;
        }
        catch (Exception broken) when (broken is IOException or UnauthorizedAccessException)
        {
            IsUnwritten = true;
            if (log is not null)
                Mishaps.Note(log, broken);
        }
    }

    private bool IsLetIn(Device device) => device.Until > time.GetUtcNow();

    private static IReadOnlyList<Device> Read(byte[]? file)
    {
        try
        {
            return file is null ? [] : JsonSerializer.Deserialize<Device[]>(file) ?? [];
        }
        catch (JsonException)
        {
            // Nobody is let in by a file that cannot be read: they are paired again.
            return [];
        }
    }
}
