// Two photographs over each other: a slider uncovers the later one, blinking shows them in turns. Without it they stand side by side.
const SLOW_MS = 900; // less than three flashes in two seconds, on purpose
const holder = document.querySelector("[data-pair]");
const [slide, blink, uncovered, edge, earlier, seen] = ["slide", "blink", "uncovered", "edge", "earlier", "seen"].map((name) => holder.querySelector(`[data-${name}]`));
const { width, height } = holder.querySelector("svg").viewBox.baseVal;
let beat;

function show() {
  const across = (width * slide.value) / 100;
  uncovered.setAttribute("width", across);
  edge.setAttribute("d", beat ? "" : `M ${across} 0 V ${height}`);
}

function turn() {
  const hidden = earlier.toggleAttribute("hidden");
  earlier.setAttribute("visibility", hidden ? "hidden" : "visible");
}

function stop() {
  clearInterval(beat);
  beat = undefined;
  earlier.removeAttribute("hidden");
  earlier.setAttribute("visibility", "visible");
}

blink.addEventListener("click", () => {
  if (beat) stop();
  else {
    slide.value = 100;
    beat = setInterval(turn, SLOW_MS);
  }
  blink.setAttribute("aria-pressed", Boolean(beat));
  seen.textContent = beat ? "Both are shown in turns; press again to stop." : "";
  show();
});
slide.addEventListener("input", () => {
  stop();
  blink.setAttribute("aria-pressed", false);
  seen.textContent = "";
  show();
});
holder.hidden = false;
show();
