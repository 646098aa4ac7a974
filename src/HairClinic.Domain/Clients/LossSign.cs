namespace HairClinic.Domain.Clients;

/// <summary>What about a loss of hair goes to a physician before it goes to a chair. Common practice; the practice does not diagnose.</summary>
public enum LossSign
{
    Sudden,
    Patchy,
    Painful,
    Scaling,
    Pustular,
    Scarring,
    InChild,
    ChangingMole,
}
