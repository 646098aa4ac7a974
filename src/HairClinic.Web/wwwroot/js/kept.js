// Nothing typed is lost, every tap counts. A page is drawn before it listens: what is typed and tapped in that moment is kept, and done
// again in order, once, when the live page stands there. The same way what stood in the forms comes back when a page whose line is lost
// must be loaded again. A classic script in the head: it listens before anything is drawn. Secrets are kept nowhere.
(() => {
  const root = document.documentElement;
  const isDrawn = () => document.querySelector("[data-interactive=false]");
  const isLive = () => !isDrawn() && document.querySelector("[data-interactive=true]");
  const isSecret = field => field.type === "password" || /password|one-time-code/.test(field.getAttribute("autocomplete") ?? "");
  const isField = element => element.matches("input:not([type=hidden], [type=submit], [type=button]), select, textarea") && element.closest("main");
  // A form that the browser sends by itself needs nobody to keep it.
  const isOurs = element => !element.closest("form[method=get], form[method=post]");
  const isTap = field => field.type === "checkbox" || field.type === "radio";
  const onceKeys = () => [...document.querySelectorAll("[data-once]")];
  const say = (id, on = true) => { const words = document.getElementById(id); if (words) words.hidden = !on; };

  // ---- what an element is called, in the drawn page and in the live one
  const words = element => element?.textContent.replace(/\s+/g, " ").trim() ?? "";
  function nameOf(element) {
    const row = element.closest("li, tr")?.querySelector("a, b, strong, label, h2, h3");
    // Whatever has a name of its own needs nothing around it, which may say something else once another choice was made.
    if (element.name) return [element.tagName, element.type, element.name, isTap(element) ? element.value : ""].join("|");
    return [
      element.tagName, element.type, isTap(element) || element.tagName === "BUTTON" ? element.value : "", element.getAttribute("aria-label"),
      element.matches("button, summary") ? words(element) : "", words(element.closest("fieldset")?.querySelector("legend")), words(row),
    ].join("|");
  }
  function markOf(element) {
    if (element.id) return { id: element.id };
    const name = nameOf(element);
    const same = namedAlike(element.tagName, name);
    return { tag: element.tagName, name, place: same.indexOf(element), of: same.length };
  }
  const namedAlike = (tag, name) => [...document.querySelectorAll(`main ${tag}`)].filter(e => nameOf(e) === name);
  function find({ once, id, tag, name, place, of }) {
    if (once !== undefined) return onceKeys()[once];
    if (id) return document.getElementById(id);
    const same = namedAlike(tag, name);
    // Which of several is meant is known only while there are as many.
    return same.length === of ? same[place] : undefined;
  }
  const isSame = (a, b) => a.id ? a.id === b.id : a.name === b.name && a.place === b.place && a.tag === b.tag;

  // ---- the acts that wait for the live page
  let waiting = [];
  let focused, late, again;
  function add(acts, act) {
    // What is typed into one field is one act, whatever else is typed meanwhile; a tap in between makes it two.
    for (let i = acts.length - 1; i >= 0 && acts[i].kind === "set"; i--)
      if (act.kind === "set" && isSame(acts[i].at, act.at)) { acts[i] = act; return; }
    acts.push(act);
  }
  const waitForLive = () => watch.observe(document.body, { subtree: true, childList: true, attributes: true });
  function keep(act) {
    add(waiting, act);
    waitForLive();
  }
  function forget() {
    watch.disconnect();
    clearTimeout(late);
    waiting = [];
    focused = late = again = undefined;
  }
  const stateOf = field =>
    field.type === "file" ? { files: field.files }
    : isTap(field) ? { checked: field.checked }
    : { value: field.value, from: caret(field, "selectionStart"), to: caret(field, "selectionEnd") };
  // Numbers and dates have none.
  const caret = (field, end) => { try { return field[end] ?? undefined; } catch { return undefined; } };

  const watch = new MutationObserver(carryOn);
  function carryOn() {
    if (!isLive()) return;
    remember();
    while (waiting.length > 0) {
      const element = find(waiting[0].at);
      if (!element || element.disabled || !carryOut(waiting[0], element)) {
        late ??= setTimeout(giveUp, again ? 4_000 : 10_000);
        return;
      }
      waiting.shift();
      clearTimeout(late);
      late = undefined;
    }
    if (again) say("typed-again");
    refocus();
    forget();
  }
  // What has no place any more is not guessed at. Before a reload it was one field of many; before a tap it was what the tap was about.
  function giveUp() {
    say("page-changed");
    late = undefined;
    if (again) { waiting.shift(); carryOn(); return; }
    for (const busy of document.querySelectorAll("main [aria-busy=true]:not(:disabled)")) busy.removeAttribute("aria-busy");
    forget();
  }
  const tell = (element, ...kinds) => { for (const kind of kinds) element.dispatchEvent(new Event(kind, { bubbles: true })); };
  function carryOut(act, element) {
    switch (act.kind) {
      case "set":
        // The framework's own file field listens a moment later than the page.
        if (act.files && element.id && !("_blazorInputFileNextFileId" in element)) return false;
        if (act.files) element.files = act.files;
        else if ("checked" in act) { if (element.type === "radio" && !act.checked) return true; element.checked = act.checked; }
        else element.value = act.value;
        tell(element, "input", "change");
        if (act.chosen) waiting.splice(1, 0, { kind: "choose", at: act.at, chosen: act.chosen });
        return true;
      case "choose": {
        const option = [...document.querySelectorAll(`#${CSS.escape(element.id)}-list [role=option]`)].find(o => o.dataset.key === act.chosen);
        option?.dispatchEvent(new MouseEvent("mousedown", { bubbles: true, cancelable: true }));
        return option;
      }
      case "open":
        element.closest("details").open = act.open;
        return true;
      case "tap":
        element.click();
        return true;
      case "send":
        element.requestSubmit();
        return true;
      default:
        element.value = act.value;
        tell(element, "change");
        return true;
    }
  }
  function refocus() {
    const field = focused && document.activeElement === document.body && find(focused.at);
    if (!field) return;
    // It is typed on, not retyped.
    if (focused.typed) field.dataset.typedOn = "";
    field.focus();
    if (focused.typed && focused.from !== undefined && focused.from !== null) try { field.setSelectionRange(focused.from, focused.to); } catch { /* has no caret */ }
    delete field.dataset.typedOn;
  }

  // ---- before the page listens
  document.addEventListener("input", ({ target }) => {
    if (!isField(target) || !isOurs(target) || isSecret(target)) return;
    const at = markOf(target);
    if (isDrawn()) {
      focused = { at, typed: !isTap(target), ...stateOf(target) };
      keep({ kind: "set", at, ...stateOf(target) });
    } else if (target.closest("[data-sealed]")) keepSealed(target);
    else if (target.type !== "file") note({ kind: "set", at, ...stateOf(target) });
  }, true);
  // A secret is kept nowhere, so until the page listens its field takes none, however it comes, and shows that it is not ready.
  document.addEventListener("beforeinput", event => {
    if (!isDrawn() || !event.target.closest?.("main") || !isSecret(event.target) || !isOurs(event.target)) return;
    event.preventDefault();
    event.target.setAttribute("aria-busy", "true");
  }, true);
  document.addEventListener("focusin", ({ target }) => {
    if (isDrawn() && target.closest("main") && !(focused && isSame(focused.at, markOf(target)))) {
      const at = markOf(target);
      focused = { at, typed: waiting.some(act => act.kind === "set" && isSame(act.at, at)) };
      waitForLive();
    }
  }, true);
  document.addEventListener("click", ({ target }) => {
    for (const id of ["page-changed", "typed-again"]) say(id, false);
    const button = target.closest?.("main button[type=button], main summary");
    if (!button || !isOurs(button)) return;
    const opens = button.matches("summary");
    const act = { kind: opens ? "open" : "tap", at: markOf(button), open: opens ? !button.parentElement.open : undefined };
    if (!isDrawn()) {
      if (opens || button.matches("[data-again]")) note(act);
      return;
    }
    if (button.getAttribute("aria-busy") === "true") return;
    if (!opens) button.setAttribute("aria-busy", "true");
    keep(act);
  }, true);
  // Only the live page sends a form of the method "dialog": the browser by itself does nothing with it.
  document.addEventListener("submit", ({ target, submitter }) => {
    if (target.getAttribute("method") !== "dialog" || !isDrawn()) return;
    const place = [...document.querySelectorAll("main form[method=dialog]")].indexOf(target);
    if (place < 0 || waiting.some(act => act.kind === "send")) return;
    submitter?.setAttribute("aria-busy", "true");
    keep({ kind: "send", at: markOf(target) });
  }, true);

  // ---- what is typed on a live page, to be there again when it must be loaded again
  let noted = [], before = new Map(), page;
  // What stands in the fields as the page goes live is the book's; only what differs from it later is somebody's own.
  function remember() {
    const marker = isLive();
    if (!marker || page === marker) return;
    [page, noted, before] = [marker, [], new Map(fields().map(field => [field, valueOf(field)]))];
  }
  const fields = () => [...document.querySelectorAll("main input, main select, main textarea")]
    .filter(f => isField(f) && isOurs(f) && !isSecret(f) && f.type !== "file" && !f.disabled && !f.closest("[data-sealed]"));
  const valueOf = field => isTap(field) ? field.checked : field.value;
  const formKeys = () => onceKeys().map(key => key.value).join();
  function note(act) {
    remember();
    // Whatever was saved is the book's: a form has another key then.
    noted = noted.filter(n => n.keys === formKeys());
    add(noted, { ...act, keys: formKeys() });
  }
  for (const kind of ["pointerdown", "keydown"]) document.addEventListener(kind, remember, true);

  // What is confided never stays in this browser: its draft is the book's, which gets it as it is typed and not when the field is left.
  // The form hears keys only, so it is told once more after the field has its new value.
  let soon, telling;
  function keepSealed(field) {
    if (telling) return;
    clearTimeout(soon);
    if (!field.matches("textarea, input[type=text]")) return;
    soon = setTimeout(() => {
      telling = true;
      tell(field, "change", "input");
      telling = false;
    }, 150);
  }

  const isLost = () => document.querySelector("#components-reconnect-modal[open]")
    || getComputedStyle(document.getElementById("blazor-error-ui") ?? root).display === "block" && document.getElementById("blazor-error-ui");
  function stash() {
    if (!isLost() || !page?.isConnected) return;
    const keys = formKeys();
    const acts = noted.filter(n => n.keys === keys && n.kind !== "choose").map(({ keys: _, ...act }) => act)
      // A form whose draft the book keeps has its rows back already.
      .filter(act => act.kind !== "tap" || !find(act.at)?.closest("[data-draft]"));
    for (const field of fields()) {
      const at = markOf(field);
      const known = acts.findLast(act => act.kind === "set" && isSame(act.at, at));
      if (!known && before.get(field) === valueOf(field)) continue;
      if (field.type === "radio" && !field.checked) {
        // Chosen and taken back since.
        if (known) acts.splice(acts.indexOf(known), 1);
        continue;
      }
      const { from, to, ...state } = stateOf(field);
      const chosen = field.matches("[role=combobox]") && field.parentElement.querySelector("input[type=hidden]")?.value || undefined;
      if (known) Object.assign(known, state, { chosen });
      else acts.push({ kind: "set", at, ...state, chosen });
    }
    if (acts.length === 0) return;
    const once = onceKeys().map((key, number) => ({ number, value: key.value }));
    sessionStorage.setItem("kept", JSON.stringify({ address: location.pathname + location.search, who: root.dataset.who, once, acts }));
  }
  addEventListener("pagehide", stash);

  function takeBack() {
    const kept = JSON.parse(sessionStorage.getItem("kept") ?? "null");
    if (!kept) return;
    const here = kept.address === location.pathname + location.search && kept.who === root.dataset.who;
    // A page that stands in for one that cannot be shown just now is not that page: it waits for it.
    if (here && !document.querySelector("[data-interactive]")) return;
    sessionStorage.removeItem("kept");
    if (!here) return;
    again = true;
    for (const { number, value } of kept.once) waiting.push({ kind: "once", at: { once: number }, value });
    kept.acts.forEach(act => waiting.push(act));
    waitForLive();
    carryOn();
  }
  document.addEventListener("DOMContentLoaded", () => {
    takeBack();
    globalThis.Blazor?.addEventListener("enhancednavigationstart", forget);
  });
})();
