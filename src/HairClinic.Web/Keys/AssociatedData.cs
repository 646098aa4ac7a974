using System.Buffers.Binary;

namespace HairClinic.Web.Keys;

/// <summary>
/// What sealed bytes belong to, written so that no two things read the same: each part behind its length. Bytes moved to
/// another client, purpose, row or practice then do not open.
/// </summary>
public static class AssociatedData
{
    public static byte[] ForClientKey(Guid practiceId, Guid clientId, string masterKeyId) =>
        EncodeParts("client key"u8.ToArray(), GuidBytes(practiceId), GuidBytes(clientId), Encoding.UTF8.GetBytes(masterKeyId));

    public static byte[] ForContent(Guid practiceId, Guid clientId, string purpose, Guid rowId) =>
        EncodeParts("content"u8.ToArray(), GuidBytes(practiceId), GuidBytes(clientId), Encoding.UTF8.GetBytes(purpose), GuidBytes(rowId));

    public static byte[] EncodeParts(params ReadOnlySpan<byte[]> parts)
    {
        using var all = new MemoryStream();
        Span<byte> length = stackalloc byte[4];
        foreach (var part in parts)
        {
            BinaryPrimitives.WriteInt32BigEndian(length, part.Length);
            all.Write(length);
            all.Write(part);
        }
        return all.ToArray();
    }

    public static byte[] GuidBytes(Guid id) => id.ToByteArray(bigEndian: true);
}
