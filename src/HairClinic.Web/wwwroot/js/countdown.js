// Counts down every <time data-countdown datetime="…"> in the page, with or without a connection.
const fill = (words, ...values) => words.replace(/\{(\d)\}/g, (_, i) => values[i]);

function draw(time, now) {
  const left = Math.max(0, Date.parse(time.dateTime) - now) / 1000;
  const { done, hours, minutes, left: words } = time.dataset;
  const text = left === 0 ? done
    : fill(words, left >= 3600
      ? fill(hours, Math.floor(left / 3600), Math.floor(left % 3600 / 60))
      : fill(minutes, Math.floor(left / 60), Math.floor(left % 60)));
  if (time.textContent === text) return;
  const ended = left === 0 && time.textContent !== done && time.dataset.running;
  time.firstChild.data = text; // keeps the node, which the page's renderer may still own
  time.dataset.running = left > 0 ? "yes" : "";
  if (ended && time.nextElementSibling) time.nextElementSibling.textContent = done;
}

// The practice's clock counts, not the phone's: each time carries the moment it was drawn at.
const seen = new Map();
function clock({ dataset: { now } }) {
  if (!seen.has(now)) seen.set(now, Date.parse(now) - performance.now());
  return seen.get(now) + performance.now();
}

const all = () => document.querySelectorAll("time[data-countdown]").forEach(time => draw(time, clock(time)));
all();
setInterval(all, 1000);
