// What signing in needs of a browser: asking the device for a passkey, and showing what is typed into a password.
async function ask(form) {
  const token = form.querySelector("[name=__RequestVerificationToken]").value;
  const answer = await fetch(form.dataset.passkey, { method: "POST", headers: { RequestVerificationToken: token } });
  if (!answer.ok) throw new Error(answer.statusText);
  const options = await answer.json();
  return form.hasAttribute("data-passkey-new")
    ? navigator.credentials.create({ publicKey: PublicKeyCredential.parseCreationOptionsFromJSON(options) })
    : navigator.credentials.get({ publicKey: PublicKeyCredential.parseRequestOptionsFromJSON(options) });
}

document.addEventListener("click", async ({ target }) => {
  const button = target.closest("[data-passkey-ask]");
  if (!button) return;
  const form = button.form;
  const fault = form.querySelector("[data-passkey-fault]");
  fault.hidden = true;
  button.disabled = true;
  try {
    form.elements.Credential.value = JSON.stringify(await ask(form));
    form.submit();
  } catch {
    fault.hidden = false;
    button.disabled = false;
  }
});

document.addEventListener("change", ({ target }) => {
  const field = document.getElementById(target.closest("[data-shows]")?.dataset.shows);
  if (field) field.type = target.checked ? "text" : "password";
});

function settle() {
  for (const toggle of document.querySelectorAll("[data-shows]")) toggle.hidden = false;
  const can = globalThis.PublicKeyCredential?.parseRequestOptionsFromJSON;
  for (const form of document.querySelectorAll("[data-passkey], [data-passkey-new]")) form.hidden = !can;
}
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
