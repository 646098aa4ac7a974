using System.Text.Json;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace HairClinic.Web.Data.Maps;

public sealed class VisitRecordMap() : FencedMap<VisitRecord>("visit_records")
{
    public const string OnePerVisit = "ix_visit_records_practice_id_visit_id";

    protected override void Map(EntityTypeBuilder<VisitRecord> builder)
    {
        builder.ComplexProperty(
            x => x.Grades,
            g =>
            {
                foreach (
                    var grade in typeof(InspectionGrades)
                        .GetProperties()
                        .Where(p => p.CanWrite && p.Name != nameof(InspectionGrades.WorstStructural))
                )
                    g.Property(grade.PropertyType, grade.Name)
                        .HasColumnName("grade_" + JsonNamingPolicy.SnakeCaseLower.ConvertName(grade.Name));
            }
        );
        builder.Refers<VisitRecord, HairSystem>(x => x.RemovedUnitId);
        builder.Refers<VisitRecord, Person>(x => x.RecordedBy);
        builder.HasIndex(x => new { x.PracticeId, x.RemovedUnitId });
    }
}
