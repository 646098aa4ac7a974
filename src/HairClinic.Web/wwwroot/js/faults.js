// A form that is not saved yet: the first field with a fault is entered, wherever the button was.
const told = new WeakMap();
function enter() {
  for (const summary of document.querySelectorAll("[data-faults]")) {
    if (told.get(summary) === summary.dataset.faults) continue;
    told.set(summary, summary.dataset.faults);
    if (summary.dataset.faults !== "0") go(summary);
  }
}
function go(summary) {
  const field = [...summary.querySelectorAll("a[href*='#']")].map(link => document.getElementById(link.hash.slice(1))).find(Boolean);
  if (!field) {
    summary.scrollIntoView({ block: "nearest" });
    return;
  }
  for (let fold = field.closest("details"); fold; fold = fold.parentElement.closest("details")) fold.open = true;
  const control = field.matches("input, select, textarea, button, [tabindex]") ? field : field.querySelector("input, select, textarea, button") ?? field;
  control.focus({ preventScroll: true });
  (field.closest(".field, fieldset") ?? field).scrollIntoView({ block: "center" });
}
new MutationObserver(enter).observe(document.body, { subtree: true, childList: true, attributeFilter: ["data-faults"] });
