// A photograph looked at closely: zoom and shift by touch, wheel and keys; a sharper piece is fetched once it would show.
import { Layer, make } from "./layer.js";

const SCREEN_PX = 1600; // the longer side of the copy that is shown first
const PAUSE_MS = 250;
const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };

function look(holder) {
  const svg = holder.querySelector("svg");
  const layer = new Layer(svg);
  const keys = { "+": () => layer.zoom(2), "-": () => layer.zoom(0.5), 0: () => layer.zoom(0) };
  const whole = svg.querySelector("image");
  let waiting;
  let sharp;

  function sharpen() {
    const { x, y, width, height } = layer.view;
    const shown = (Math.max(layer.whole.width, layer.whole.height) / SCREEN_PX) * (svg.clientWidth / width);
    if (shown <= 1 || width === layer.whole.width) return;
    const piece = make(svg, "image", { x, y, width, height, preserveAspectRatio: "none" });
    whole.after(piece);
    piece.addEventListener("load", () => {
      sharp?.remove();
      sharp = piece;
    });
    piece.setAttribute("href", `${holder.dataset.crop}?${new URLSearchParams([x, y, width, height].map((value, i) => ["xywh"[i], Math.round(value)]))}`);
  }

  svg.addEventListener("layer-view", () => {
    clearTimeout(waiting);
    waiting = setTimeout(sharpen, PAUSE_MS);
  });
  svg.addEventListener("keydown", (event) => {
    const step = STEPS[event.key];
    if ((!step && !keys[event.key]) || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    if (step) layer.shift((step[0] * layer.view.width) / 10, (step[1] * layer.view.height) / 10);
    else keys[event.key]();
  });
  for (const button of holder.querySelectorAll("[data-zoom]")) button.addEventListener("click", () => layer.zoom(Number(button.dataset.zoom)));
  for (const hidden of holder.querySelectorAll("[data-layer-tools], [data-layer-help]")) hidden.hidden = false;
  svg.setAttribute("tabindex", "0");
}

for (const holder of document.querySelectorAll("[data-look]")) look(holder);
