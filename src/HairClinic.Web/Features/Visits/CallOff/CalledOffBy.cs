namespace HairClinic.Web.Features.Visits;

public enum CalledOffBy
{
    Client,
    Salon,
}
