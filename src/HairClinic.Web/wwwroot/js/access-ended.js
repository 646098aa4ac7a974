// Says that this page's person may no longer be here; the words are the page's own.
export function tell() {
  const words = document.getElementById("access-ended");
  if (words) words.hidden = false;
}
