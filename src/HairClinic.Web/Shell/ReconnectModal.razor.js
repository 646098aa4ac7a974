const dialog = document.getElementById("components-reconnect-modal");
const whenSeen = () => document.visibilityState === "visible" && reconnect();

async function reconnect() {
  document.removeEventListener("visibilitychange", whenSeen);
  try {
    // false: the server answered but no longer knows this page; an exception: it did not answer.
    if (await Blazor.reconnect()) return;
    if (await Blazor.resumeCircuit()) dialog.close();
    else location.reload();
  } catch {
    document.addEventListener("visibilitychange", whenSeen);
  }
}

async function resume() {
  try {
    if (!await Blazor.resumeCircuit()) location.reload();
  } catch {
    dialog.classList.replace("components-reconnect-paused", "components-reconnect-resume-failed");
  }
}

dialog.addEventListener("components-reconnect-state-changed", ({ detail: { state } }) => {
  if (state === "show") dialog.showModal();
  else if (state === "hide") dialog.close();
  else if (state === "failed") document.addEventListener("visibilitychange", whenSeen);
  else if (state === "rejected") location.reload();
});
document.getElementById("components-reconnect-button").addEventListener("click", reconnect);
document.getElementById("components-resume-button").addEventListener("click", resume);
