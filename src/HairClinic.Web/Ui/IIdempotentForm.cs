namespace HairClinic.Web.Ui;

/// <summary>A form that is carried out once, by an id made when it opened.</summary>
public interface IIdempotentForm
{
    /// <summary>Made when the form opened, and anew once it was carried out.</summary>
    Guid Key { get; }

    /// <summary>Takes up the id that the form had before its page had to be loaded again: what may have been saved then is not saved twice.</summary>
    void AdoptKey(Guid key);
}
