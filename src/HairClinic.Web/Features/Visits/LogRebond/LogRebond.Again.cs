namespace HairClinic.Web.Features.Visits;

public sealed partial class LogRebond
{
    public sealed partial record Input
    {
        /// <summary>What was typed into a log, to be logged once more. What must be confirmed anew is not in it.</summary>
        /// <param name="worn">What was on the head before.</param>
        public static Input FromRecord(VisitRecord record, Bond made, Bond? worn, Salon salon)
        {
            var input = new Input
            {
                VisitId = record.VisitId,
                WornBondId = worn?.Id,
                UnitId = made.HairSystemId,
                Attachment = made.Attachment,
                Products =
                [
                    .. made.Products.Select(p => new ProductLine
                    {
                        ProductId = p.ProductId,
                        LotId = p.LotId,
                        Coats = p.Coats,
                    }),
                ],
                WaitsKept = made.WaitsKept,
                FinishedAt = made.AppliedAt?.InZone(salon.TimeZone).TimeOfDay is { } time ? new LocalTime(time.Hour, time.Minute) : null,
                Note = ClearanceGate.StripSetAsideLine(record.Note),
            };
            if (worn is not null)
                input.SetFound(record, worn);
            return input;
        }
    }
}
