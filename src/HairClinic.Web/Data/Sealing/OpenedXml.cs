using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.XmlEncryption;

namespace HairClinic.Web.Data.Sealing;

/// <summary>Opens what <see cref="SealedXml"/> sealed. Its name stands beside every sealed key: renaming it locks them.</summary>
public sealed class OpenedXml(IServiceProvider services) : IXmlDecryptor
{
    public XElement Decrypt(XElement encryptedElement) => SealedXml.Decrypt(services.GetRequiredService<MasterKeys>(), encryptedElement);
}
