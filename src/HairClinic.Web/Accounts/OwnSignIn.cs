using HairClinic.Web.Fence;

namespace HairClinic.Web.Accounts;

/// <summary>A client's sign-in as it holds now.</summary>
/// <param name="Household">Whether its address opens more than one page.</param>
/// <param name="OpensAll">Whether its address is confirmed for the page it shows; else it opens dates only.</param>
public sealed record OwnSignIn(ClientActor Actor, bool Household, bool OpensAll);
