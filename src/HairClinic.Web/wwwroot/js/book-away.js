// Says that the book cannot be reached, until it can; the words are the page's own.
let asking;
export function tell() {
  const words = document.getElementById("book-away");
  if (!words) return;
  words.hidden = false;
  asking ??= setInterval(async () => {
    const answer = await fetch("/ready", { cache: "no-store" }).catch(() => undefined);
    if (!answer?.ok) return;
    clearInterval(asking);
    asking = undefined;
    document.getElementById("book-away").hidden = true;
  }, 2_000);
}
