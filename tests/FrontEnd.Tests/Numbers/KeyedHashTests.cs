using System.Security.Cryptography;
using FrontEnd.Numbers;
using Xunit;

namespace FrontEnd.Tests.Numbers;

/// <summary>The hash against the framework's, at every length around its blocks.</summary>
public class KeyedHashTests
{
    [Fact]
    public void Sha256_AnyLength_IsTheFrameworks()
    {
        for (int length = 0; length <= 200; length++)
        {
            byte[] message = Bytes(length);
            Assert.Equal(SHA256.HashData(message), KeyedHash.Sha256(message));
        }
    }

    [Fact]
    public void Of_AnyKey_IsTheFrameworks()
    {
        foreach (int key in new[] { 0, 1, 32, 63, 64, 65, 200 })
        {
            foreach (int message in new[] { 0, 1, 55, 56, 64, 130 })
            {
                Assert.Equal(HMACSHA256.HashData(Bytes(key), Bytes(message)), KeyedHash.Of(Bytes(key), Bytes(message)));
            }
        }
    }

    private static byte[] Bytes(int length)
    {
        SeededRandom random = new((ulong)length);
        return [.. Enumerable.Range(0, length).Select(_ => (byte)random.NextBelow(256))];
    }
}
