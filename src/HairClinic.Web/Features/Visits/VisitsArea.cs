namespace HairClinic.Web.Features.Visits;

public static class VisitsArea
{
    public static IServiceCollection AddVisits(this IServiceCollection services) => services.AddAtTheChair();
}
