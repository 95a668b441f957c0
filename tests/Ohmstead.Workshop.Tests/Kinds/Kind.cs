using Ohmstead.Electrical.TypeSheets;

namespace Ohmstead.Workshop.Tests.Kinds;

/// <summary>A small kind of unit: one winding pair, a load on its post.</summary>
internal static class Kind
{
    public const string Text = """
        {
          "ohmstead": "type-sheet/1",
          "id": "pair", "title": "A pair",
          "supply": { "volts": 120, "hertz": 60 },
          "cores": [ { "id": "core", "referenceWinding": "primary", "lossOhms": 1500, "magnetisingHenries": 2 } ],
          "elements": [
            { "id": "primary", "kind": "winding", "from": "a", "to": "b", "core": "core", "turns": 300, "ohms": 3 },
            { "id": "secondary", "kind": "winding", "from": "c", "to": "d", "core": "core", "turns": 50, "ohms": 0.1 }
          ],
          "readings": [
            { "id": "cold", "title": "Blades", "quantity": "ohms", "between": ["a", "b"], "state": {}, "minutes": 1, "access": "closed", "limits": { "min": 1, "max": 10 }, "gate": true },
            { "id": "idle", "title": "Post, idle", "quantity": "ac-volts", "between": ["c", "d"], "state": { "source": { "from": "a", "to": "b", "volts": 120 } }, "minutes": 1, "access": "closed", "needs": ["cold"] },
            { "id": "loaded", "title": "Post, 4 ohm", "quantity": "ac-volts", "between": ["c", "d"], "state": { "source": { "from": "a", "to": "b", "volts": 120 }, "loads": [{ "from": "c", "to": "d", "ohms": 4 }] }, "minutes": 1, "access": "closed", "needs": ["cold"] }
          ]
        }
        """;

    public static TypeSheet Sheet { get; } = TypeSheetFile.Read(Text).Required;
}
