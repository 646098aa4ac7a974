using System.Security.Cryptography;
using HairClinic.Web.Keys;

namespace HairClinic.Web.Tests.Keys;

public sealed class AesGcmCipherTests
{
    private static readonly byte[] Key = RandomNumberGenerator.GetBytes(32);
    private static readonly byte[] Bound = [1, 2, 3];
    private static readonly byte[] Plain = [4, 5, 6, 7];

    // McGrew and Viega, "The Galois/Counter Mode of Operation (GCM)", appendix B, AES-256 with a 96-bit IV: test cases 13 to 16.
    [Theory]
    [InlineData(
        "0000000000000000000000000000000000000000000000000000000000000000",
        "000000000000000000000000",
        "",
        "",
        "",
        "530f8afbc74536b9a963b4f1c4cb738b"
    )]
    [InlineData(
        "0000000000000000000000000000000000000000000000000000000000000000",
        "000000000000000000000000",
        "",
        "00000000000000000000000000000000",
        "cea7403d4d606b6e074ec5d3baf39d18",
        "d0d1c8a799996bf0265b98b5d48ab919"
    )]
    [InlineData(
        "feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308",
        "cafebabefacedbaddecaf888",
        "",
        "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b391aafd255",
        "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662898015ad",
        "b094dac5d93471bdec1a502270e3cc6c"
    )]
    [InlineData(
        "feffe9928665731c6d6a8f9467308308feffe9928665731c6d6a8f9467308308",
        "cafebabefacedbaddecaf888",
        "feedfacedeadbeeffeedfacedeadbeefabaddad2",
        "d9313225f88406e5a55909c5aff5269a86a7a9531534f7da2e4c303d8a318a721c3c0c95956809532fcf0e2449a6b525b16aedf5aa0de657ba637b39",
        "522dc1f099567d07f47f37a32a84427d643a8cdcbfe5c0c97598a2bd2555d1aa8cb08e48590dbb3da7b08b1056828838c5f61e6393ba7a0abcc9f662",
        "76fc6ece0f4e1768cddf8853bb2d551b"
    )]
    public void The_platforms_cipher_is_called_as_published(string key, string nonce, string bound, string plain, string cipher, string tag)
    {
        byte[] sealedBytes = [AesGcmCipher.Format, .. Hex(nonce), .. Hex(tag), .. Hex(cipher)];
        var (madeCipher, madeTag) = (new byte[plain.Length / 2], new byte[16]);

        AesGcmCipher.Encrypt(Hex(key), Hex(nonce), Hex(bound), Hex(plain), madeCipher, madeTag);

        Assert.Equal(cipher, Convert.ToHexStringLower(madeCipher));
        Assert.Equal(tag, Convert.ToHexStringLower(madeTag));
        Assert.Equal(plain, Convert.ToHexStringLower(AesGcmCipher.Unseal(Hex(key), Hex(bound), sealedBytes)));
    }

    [Fact]
    public void A_bit_changed_anywhere_is_noticed()
    {
        var closed = AesGcmCipher.Seal(Key, Bound, Plain);
        for (var i = 0; i < closed.Length; i++)
        {
            var changed = (byte[])closed.Clone();
            changed[i] ^= 1;
            Assert.ThrowsAny<CryptographicException>(() => AesGcmCipher.Unseal(Key, Bound, changed));
        }
        Assert.Equal(Plain, AesGcmCipher.Unseal(Key, Bound, closed));
    }

    [Fact]
    public void Bytes_cut_short_bound_elsewhere_or_under_another_key_do_not_open()
    {
        var closed = AesGcmCipher.Seal(Key, Bound, Plain);

        Assert.ThrowsAny<CryptographicException>(() => AesGcmCipher.Unseal(Key, Bound, closed.AsSpan(0, 28)));
        Assert.ThrowsAny<CryptographicException>(() => AesGcmCipher.Unseal(Key, Bound, closed.AsSpan(0, closed.Length - 1)));
        Assert.ThrowsAny<CryptographicException>(() => AesGcmCipher.Unseal(Key, Bound, []));
        Assert.ThrowsAny<CryptographicException>(() => AesGcmCipher.Unseal(Key, [1, 2], closed));
        Assert.ThrowsAny<CryptographicException>(() => AesGcmCipher.Unseal(RandomNumberGenerator.GetBytes(32), Bound, closed));
    }

    [Fact]
    public void The_same_bytes_never_seal_the_same_way_twice() =>
        Assert.NotEqual(AesGcmCipher.Seal(Key, Bound, Plain), AesGcmCipher.Seal(Key, Bound, Plain));

    [Fact]
    public void Parts_that_only_read_the_same_together_are_bound_apart() =>
        Assert.NotEqual(AssociatedData.EncodeParts([1], [2, 3]), AssociatedData.EncodeParts([1, 2], [3]));

    private static byte[] Hex(string hex) => Convert.FromHexString(hex);
}
