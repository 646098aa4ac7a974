using HairClinic.Domain.Practices;
using HairClinic.Web.Data.Writes;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

public sealed class DraftMap() : FencedMap<Draft>("drafts")
{
    protected override void Map(EntityTypeBuilder<Draft> builder)
    {
        builder.Property(x => x.Body).HasColumnType("jsonb");
        builder.Refers<Draft, Person>(x => x.PersonId);
        builder.HasIndex(x => new { x.PracticeId, x.PersonId, x.Form, x.SubjectId }).IsUnique();
    }
}
