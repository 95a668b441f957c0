using System.Globalization;
using Ohmstead.Storage;
using Ohmstead.Storage.Killed;

// FOLDER SEED [ADDRESS]: writes entries and photos into the store of FOLDER, or of the database at ADDRESS, until it is killed, and says on standard output what was
// acknowledged, a line each.
var seed = int.Parse(args[1], CultureInfo.InvariantCulture);
await using var store =
    args.Length > 2
        ? await Store.OpenSharedAsync(args[2], args[0], new Guid(seed, 0, 0, new byte[8]))
        : await Store.OpenAsync(args[0], TimeProvider.System);
Acknowledged.Say("open");

// Two at once on the same units, as a bench and a phone are.
await Task.WhenAll(Task.Run(() => new Writer(store, seed, 1).RunAsync()), Task.Run(() => new Writer(store, seed, 2).RunAsync()));
