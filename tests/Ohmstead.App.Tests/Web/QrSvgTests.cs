using System.Globalization;
using System.Text.RegularExpressions;
using Ohmstead.App.Phones;
using ZXing;

namespace Ohmstead.App.Tests.Web;

/// <summary>The QR code as a camera sees it, read by a library that did not make it (ZXing.Net).</summary>
public sealed partial class QrSvgTests
{
    private const int Scale = 4;

    [Theory]
    [InlineData("http://192.168.1.20:5150/phone/pair/4b7c0e9a2f61d8355b7c0e9a2f61d835")]
    [InlineData("http://10.0.0.7:50123/phone/pair/ffffffffffffffffffffffffffffffff?from=lan")]
    public void A_phone_reads_the_address_out_of_it(string address)
    {
        var (pixels, side) = Painted(QrSvg.Of(address));
        var read = new BarcodeReaderGeneric().Decode(pixels, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        Assert.NotNull(read);
        Assert.Equal(BarcodeFormat.QR_CODE, read.BarcodeFormat);
        Assert.Equal(address, read.Text);
    }

    private static (byte[] Pixels, int Side) Painted(string svg)
    {
        var side = Scale * int.Parse(Box().Match(svg).Groups[1].Value, CultureInfo.InvariantCulture);
        var pixels = new byte[side * side];
        Array.Fill(pixels, (byte)255);
        foreach (Match module in Module().Matches(svg))
        {
            var (left, top) = (
                Scale * int.Parse(module.Groups[1].Value, CultureInfo.InvariantCulture),
                Scale * int.Parse(module.Groups[2].Value, CultureInfo.InvariantCulture)
            );
            for (var y = top; y < top + Scale; y++)
                Array.Fill(pixels, (byte)0, (y * side) + left, Scale);
        }
        return (pixels, side);
    }

    [GeneratedRegex("viewBox=\"0 0 ([0-9]+) ")]
    private static partial Regex Box();

    [GeneratedRegex("M([0-9]+),([0-9]+)h1v1h-1z")]
    private static partial Regex Module();
}
