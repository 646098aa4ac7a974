// The frame's few habits: the cover, the key to Find, and keys that belong to our own controls.
const root = document.documentElement;
const button = () => document.querySelector("[data-cover]");
const typing = element => element.closest("input, textarea, select, [contenteditable]");
const slash = () => localStorage.getItem("keys") !== "off";
let idle;

function cover(on) {
  root.classList.toggle("covered", on);
  document.cookie = `covered=${on ? 1 : 0}; path=/; samesite=strict`;
}

function stir() {
  clearTimeout(idle);
  const minutes = Number(button()?.dataset.coverAfter);
  if (minutes > 0) idle = setTimeout(() => cover(true), minutes * 60_000);
}

document.addEventListener("click", ({ target }) => {
  if (target.closest("[data-cover]")) cover(!root.classList.contains("covered"));
  if (target.closest("[data-print]")) print();
  for (const open of document.querySelectorAll("details.menu[open]"))
    if (!open.contains(target)) open.open = false;
});

document.addEventListener("change", ({ target }) => {
  if (target.matches("[data-keys]")) localStorage.setItem("keys", target.checked ? "on" : "off");
});

document.addEventListener("keydown", event => {
  const { key, target } = event;
  if (key === "Escape") for (const open of document.querySelectorAll("details.menu[open]")) { open.open = false; open.firstElementChild.focus(); }
  if (key === "F2" && button()) { event.preventDefault(); cover(!root.classList.contains("covered")); }
  if (key === "/" && slash() && !event.ctrlKey && !event.metaKey && !event.altKey && !typing(target)) {
    const find = document.querySelector("[data-find]");
    if (find) { event.preventDefault(); find.focus(); find.select(); }
  }
  // The list's keys must not move the caret or send the form; the tabs' keys must not scroll the page.
  if (target.matches("[role=combobox]") && (/^Arrow(Up|Down)$/.test(key) || (key === "Enter" && target.hasAttribute("aria-activedescendant")))) event.preventDefault();
  if (target.matches("[role=tab]") && (key === "Home" || key === "End")) event.preventDefault();
}, true);

for (const sign of ["pointerdown", "keydown", "wheel", "touchmove"]) addEventListener(sign, stir, { passive: true, capture: true });

function settle() {
  const box = document.querySelector("[data-keys]");
  if (box) box.checked = slash();
  stir();
}
settle();
globalThis.Blazor?.addEventListener("enhancedload", settle);

// A field that searches is retyped, not edited: what stands there is selected as it is entered, at the first key stroke at the latest.
let entered;
function selectEntered() {
  entered?.select();
  entered = undefined;
}
document.addEventListener("focusin", ({ target }) => {
  entered = target.matches("[role=combobox]") && !("typedOn" in target.dataset) ? target : undefined;
  // Not at once: the tap that entered it would put the caret back.
  setTimeout(selectEntered);
});
for (const sign of ["keydown", "beforeinput"]) document.addEventListener(sign, selectEntered, true);
document.addEventListener("focusout", () => { entered = undefined; });

// A file that is too large is told at its field before it is sent; the server says the same where no script runs.
function tooLarge(field) {
  const large = [...field.files].some(file => file.size > Number(field.dataset.mostBytes));
  const frame = field.closest(".field");
  const id = `${field.id}-errors`;
  const before = document.getElementById(id);
  (before?.closest("[role=alert]") ?? before)?.remove();
  frame?.classList.toggle("wrong", large);
  if (!large || !frame) return large;
  const alert = document.createElement("div");
  const list = Object.assign(document.createElement("ul"), { id, className: "errors" });
  alert.setAttribute("role", "alert");
  list.append(Object.assign(document.createElement("li"), { textContent: field.dataset.tooLarge }));
  alert.append(list);
  frame.append(alert);
  return large;
}
document.addEventListener("change", ({ target }) => {
  if (target.matches("input[data-most-bytes]")) tooLarge(target);
});
document.addEventListener("submit", event => {
  const field = [...event.target.querySelectorAll("input[data-most-bytes]")].find(tooLarge);
  if (!field) return;
  event.preventDefault();
  field.focus();
}, true);
