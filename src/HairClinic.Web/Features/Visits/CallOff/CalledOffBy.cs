namespace HairClinic.Web.Features.Visits.CallOff;

public enum CalledOffBy
{
    Client,
    Salon,
}
