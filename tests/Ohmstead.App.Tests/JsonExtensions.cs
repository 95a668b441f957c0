using System.Text.Json;

namespace Ohmstead.App.Tests;

/// <summary>Short ways into a JSON answer.</summary>
internal static class JsonExtensions
{
    public static string Text(this JsonElement e, string field) => e.GetProperty(field).GetString()!;

    public static double Number(this JsonElement e, string field) => e.GetProperty(field).GetDouble();

    public static JsonElement[] List(this JsonElement e, string field) => [.. e.GetProperty(field).EnumerateArray()];

    public static string[] Fields(this JsonElement e) => [.. e.EnumerateObject().Select(p => p.Name)];

    public static string[] Words(this JsonElement e, string field) => [.. e.List(field).Select(w => w.GetString()!)];
}
