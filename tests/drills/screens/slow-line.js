// In every page: once it listens, taps and sendings are counted and go no further, so that all of them can be tried in one opening and
// the book stays as it is.
(() => {
  const heard = {};
  const listens = () => !document.querySelector("[data-interactive=false]") && document.querySelector("[data-interactive=true]");
  const words = e => e?.textContent.replace(/\s+/g, " ").trim() ?? "";
  const called = e => [e.tagName, e.type, e.name, e.getAttribute("aria-label"), e.id, e.tagName === "FORM" ? "" : words(e)].join("|");
  // What is typed into a row may stand in its labels too, for those who listen.
  const labelOf = field => { const label = field.closest("label")?.cloneNode(true); label?.querySelectorAll(".unseen").forEach(e => e.remove()); return words(label); };
  const alike = f => [...document.querySelectorAll("main input")].filter(o => o.type === f.type && o.name === f.name && o.value === f.value && labelOf(o) === labelOf(f) && (f.name || legendOf(o) === legendOf(f)));
  const legendOf = field => words(field.closest("fieldset")?.querySelector("legend"));
  const calledField = f => ({ id: f.id, type: f.type, name: f.name, value: f.value, words: labelOf(f), legend: f.name ? "" : legendOf(f), place: alike(f).indexOf(f) });
  const stop = e => { e.stopImmediatePropagation(); e.preventDefault(); };
  addEventListener("click", event => {
    const button = event.target.closest?.("main button[type=button]");
    if (!button || !listens()) return;
    heard[called(button)] = (heard[called(button)] ?? 0) + 1;
    stop(event);
  }, true);
  addEventListener("submit", event => {
    if (event.target.getAttribute("method") !== "dialog" || !listens()) return;
    heard[called(event.target)] = (heard[called(event.target)] ?? 0) + 1;
    stop(event);
  }, true);
  const seen = e => !e.disabled && e.checkVisibility() && !e.closest("form[method=get], form[method=post]");
  const secret = e => e.type === "password" || /password|one-time-code/.test(e.getAttribute("autocomplete") ?? "");

  globalThis.drill = {
    isDrawn: () => document.readyState !== "loading" && document.querySelector("[data-interactive=false]") !== null,
    // Everything that is drawn is typed into and tapped, buttons twice.
    tapAll() {
      if (listens() || !document.querySelector("[data-interactive=false]")) return null;
      const done = { taps: {}, busy: 0, fields: [] };
      const groups = new Set();
      for (const field of document.querySelectorAll("main input:not([type=hidden], [type=file]), main select, main textarea")) {
        if (!seen(field) || secret(field)) continue;
        if (field.type === "radio") {
          const group = field.closest("fieldset") ?? field.name;
          if (groups.has(group) || field.checked) continue;
          groups.add(group);
          field.click();
          done.fields.push({ ...calledField(field), checked: true });
        } else if (field.type === "checkbox") {
          field.click();
          done.fields.push({ ...calledField(field), checked: field.checked });
        } else if (field.id && field.matches("textarea, [type=text], [type=tel], [type=search], input:not([type])")) {
          field.value = "typed at once";
          field.dispatchEvent(new Event("input", { bubbles: true }));
          done.fields.push({ id: field.id, value: field.value });
        } else if (field.id && field.tagName === "SELECT" && field.options.length > 1) {
          field.selectedIndex = field.options.length - 1;
          field.dispatchEvent(new Event("input", { bubbles: true }));
          done.fields.push({ id: field.id, value: field.value });
        }
      }
      for (const button of document.querySelectorAll("main button[type=button]")) {
        if (!seen(button)) continue;
        button.click();
        button.click();
        done.taps[called(button)] = (done.taps[called(button)] ?? 0) + 1;
        if (button.getAttribute("aria-busy") === "true") done.busy++;
      }
      const form = [...document.querySelectorAll("main form[method=dialog]")].find(f => f.checkVisibility());
      if (form) {
        form.requestSubmit();
        done.taps[called(form)] = 1;
      }
      return done;
    },
    // What became of it: lost, done twice, wiped or flipped.
    look(done) {
      const wrong = [];
      let hidden = 0;
      for (const [name, times] of Object.entries(done.taps))
        if (heard[name] !== times) wrong.push(`${name}: tapped ${times}, heard ${heard[name] ?? 0}`);
      for (const name of Object.keys(heard)) if (!(name in done.taps)) wrong.push(`${name}: heard, not tapped`);
      for (const field of done.fields) {
        const all = field.id
          ? [document.getElementById(field.id)].filter(Boolean)
          : [...document.querySelectorAll("main input")].filter(f => { const n = calledField(f); return ["type", "name", "value", "words", "legend", "place"].every(k => n[k] === field[k]); });
        // A choice made after it may take a field off the page.
        if (all.length === 0) hidden++;
        else if (!all.some(f => "checked" in field ? f.checked === field.checked : f.value === field.value)) wrong.push(`${field.id || field.words}: stands as ${all[0].value || all[0].checked}`);
      }
      return { wrong, hidden, said: !document.getElementById("page-changed")?.hidden };
    },
  };
})();
