// A shared tablet. It locks itself when nobody has touched it, and tells the server of touches; the server locks in any case.
const form = () => document.querySelector("[data-lock-after]");
const limit = () => Number(form()?.dataset.lockAfter) * 60_000;
const quiet = 15_000;
let touched = Date.now();
let idle, telling;
let leaving = false;

function leave(to) {
  leaving = true;
  location.replace(to);
}

async function lock() {
  const at = form();
  if (!at || leaving) return;
  leaving = true;
  at.elements.from.value = location.pathname;
  // Nothing of this person stays to be seen while the line is slow.
  document.documentElement.classList.add("covered");
  try {
    const answer = await fetch(at.action, { method: "POST", body: new URLSearchParams(new FormData(at)) });
    leave(answer.redirected ? answer.url : at.dataset.switch);
  } catch {
    leave(at.dataset.switch);
  }
}

// A page behind another one does not lock the one that is in use: it asks when it comes to the front.
function wait() {
  clearTimeout(idle);
  if (form()) idle = setTimeout(() => document.hidden || lock(), Math.max(0, touched + limit() - Date.now()));
}

async function tell() {
  telling = undefined;
  const at = form();
  if (!at || leaving) return;
  try {
    const token = at.elements.__RequestVerificationToken.value;
    const answer = await fetch(at.dataset.touch, { method: "POST", headers: { RequestVerificationToken: token } });
    if (answer.redirected || !answer.ok) leave(at.dataset.switch);
  } catch { /* No line: the server finds that nobody was here, and locks. */ }
}

function stir() {
  if (!form() || leaving) return;
  touched = Date.now();
  telling ??= setTimeout(tell, quiet);
  wait();
}

for (const sign of ["pointerdown", "keydown", "wheel", "touchmove"]) addEventListener(sign, stir, { passive: true, capture: true });

// Back from sleep, or from another page: the server knows whether this one is still theirs.
document.addEventListener("visibilitychange", async () => {
  if (document.hidden || !form() || leaving) return;
  const root = document.documentElement;
  const wasCovered = root.classList.contains("covered");
  root.classList.add("covered");
  await tell();
  if (!leaving) root.classList.toggle("covered", wasCovered);
  stir();
});
addEventListener("pageshow", ({ persisted }) => { if (persisted && form()) leave(form().dataset.switch); });
document.addEventListener("submit", ({ target }) => {
  if (target === form()) target.elements.from.value = location.pathname;
});

// The keys of a PIN.
document.addEventListener("click", ({ target }) => {
  const key = target.closest("[data-digit]");
  if (!key) return;
  const pin = key.form.querySelector("[data-pin]");
  pin.value = key.dataset.digit ? (pin.value + key.dataset.digit).slice(0, pin.maxLength) : pin.value.slice(0, -1);
});

function settle() {
  for (const pad of document.querySelectorAll("[data-keypad]")) {
    pad.hidden = false;
    pad.closest("form").querySelector("[data-without-keypad]").hidden = true;
    // The keys are on the page: no other keyboard comes up over them.
    pad.closest("form").querySelector("[data-pin]").inputMode = "none";
  }
  wait();
}
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);
