using System.Xml.Linq;
using HairClinic.Web.Keys;
using Microsoft.AspNetCore.DataProtection.XmlEncryption;

namespace HairClinic.Web.Data.Sealing;

/// <summary>Seals the keys that protect cookies and forms under a master key, so that a copy of the database cannot be used to sign in.</summary>
public sealed class ProtectionKeyEncryptor(MasterKeys masters) : IXmlEncryptor
{
    internal const string Element = "sealedKey";
    internal const string MasterKeyId = "masterKey";

    private static readonly byte[] Bound = AssociatedData.EncodeParts(Encoding.UTF8.GetBytes("protection key"));

    public EncryptedXmlInfo Encrypt(XElement plaintextElement)
    {
        var master = masters.Current;
        var key = master.DeriveKey("protection keys");
        var plain = Encoding.UTF8.GetBytes(plaintextElement.ToString(SaveOptions.DisableFormatting));
        var element = new XElement(
            Element,
            new XAttribute(MasterKeyId, master.Id),
            Convert.ToBase64String(AesGcmCipher.Seal(key, Bound, plain))
        );
        CryptographicOperations.ZeroMemory(key);
        CryptographicOperations.ZeroMemory(plain);
        return new EncryptedXmlInfo(element, typeof(OpenedXml));
    }

    internal static XElement Decrypt(MasterKeys masters, XElement element)
    {
        var id = (string?)element.Attribute(MasterKeyId) ?? "";
        var master = masters.Find(id) ?? throw new CryptographicException($"Key {id} is not in the key file.");
        var key = master.DeriveKey("protection keys");
        var plain = AesGcmCipher.Unseal(key, Bound, Convert.FromBase64String(element.Value));
        var opened = XElement.Parse(Encoding.UTF8.GetString(plain));
        CryptographicOperations.ZeroMemory(key);
        CryptographicOperations.ZeroMemory(plain);
        return opened;
    }
}

/// <summary>Opens what <see cref="ProtectionKeyEncryptor"/> sealed. Its type name is stored beside every sealed key: renaming it makes them unreadable.</summary>
public sealed class OpenedXml(IServiceProvider services) : IXmlDecryptor
{
    public XElement Decrypt(XElement encryptedElement) =>
        ProtectionKeyEncryptor.Decrypt(services.GetRequiredService<MasterKeys>(), encryptedElement);
}
