using System.Buffers.Binary;
using HairClinic.Web.Data.Rows;
using HairClinic.Web.Keys;

namespace HairClinic.Web.AccessLog;

/// <summary>How a line of the access log is signed: HMAC-SHA256 over its parts, each behind its length, the line before included.</summary>
public static class AccessChain
{
    private const byte Format = 1;

    /// <summary>What stands before the first line.</summary>
    public static readonly byte[] Beginning = new byte[HMACSHA256.HashSizeInBytes];

    public static byte[] Sign(AccessNote note, MasterKey master)
    {
        var key = master.DeriveKey("access log");
        var hash = HMACSHA256.HashData(key, Encode(note));
        CryptographicOperations.ZeroMemory(key);
        return hash;
    }

    /// <summary>The database keeps microseconds; what is signed must read the same afterwards.</summary>
    public static Instant ToMicroseconds(Instant at) => Instant.FromUnixTimeTicks(at.ToUnixTimeTicks() / 10 * 10);

    private static byte[] Encode(AccessNote note) =>
        AssociatedData.EncodeParts(
            [Format],
            AssociatedData.GuidBytes(note.PracticeId),
            AssociatedData.GuidBytes(note.Id),
            Number(note.Number),
            Number(note.At.ToUnixTimeTicks()),
            Text(note.ActorKind.ToString()),
            Optional(note.ActorId),
            Text(note.Role),
            Text(note.Action.ToString()),
            Optional(note.ClientId),
            Optional(note.SubjectId),
            note.Reason is null ? [] : [1, .. Text(note.Reason)],
            Text(note.KeyId),
            note.PreviousHash
        );

    private static byte[] Number(long number)
    {
        var bytes = new byte[8];
        BinaryPrimitives.WriteInt64BigEndian(bytes, number);
        return bytes;
    }

    private static byte[] Text(string text) => Encoding.UTF8.GetBytes(text);

    private static byte[] Optional(Guid? id) => id is { } value ? AssociatedData.GuidBytes(value) : [];
}
