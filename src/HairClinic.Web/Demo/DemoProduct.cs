using HairClinic.Domain.Bonding;
using HairClinic.Domain.Shelf;

namespace HairClinic.Web.Demo;

public sealed record DemoProduct(string Name, ProductKind Kind, string Chemistry, Attachment Attachment, string LotLetter);
