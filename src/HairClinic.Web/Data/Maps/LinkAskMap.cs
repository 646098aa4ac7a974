using HairClinic.Web.Data.Accounts;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

public sealed class LinkAskMap() : FencedMap<LinkAsk>("link_asks")
{
    protected override void Map(EntityTypeBuilder<LinkAsk> builder)
    {
        builder.HasIndex(x => new
        {
            x.PracticeId,
            x.AddressHash,
            x.At,
        });
    }
}
