namespace HairClinic.Domain.Shelf;

public enum ProductKind
{
    Adhesive,
    Tape,
    Protector,
    Remover,
    Solvent,
    Cleaner,
    Other,
}
