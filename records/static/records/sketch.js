// Points set on a picture by touch, mouse and keys; they stand in a field, one a line, where they can be typed as well.
import { Layer, make } from "./layer.js";

const NEAR_PX = 16; // of the screen: a point as near as this is meant
const LINE = /^\s*([\d.,]+?)(?:\s*;\s*|,?\s+)([\d.,]+)\s*$/;
const holder = document.querySelector("[data-sketch]");
const svg = holder.querySelector("svg");
const field = document.querySelector("[data-points]");
const most = Number(field.dataset.most);
const said = holder.querySelector("[data-layer-said]");
const layer = new Layer(svg);
const group = make(svg, "g", { class: `shape sketch shape-${holder.dataset.sketch}` });
const [ground, line, dots, mark] = ["ground", "line", "dots", "picked"].map((name) => make(group, "path", { class: `shape-${name}` }));
const cross = make(svg, "path", { class: "layer-cross" });
let points = [];
let picked = -1; // the point that arrow keys move
let cursor = [layer.whole.width / 2, layer.whole.height / 2];

const number = (text) => parseFloat(text.replace(",", "."));
const CLOSED = ["area", "polygon", "rectangle"];
const pair = ([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`;

function read() {
  const lines = field.value.split("\n").map((each) => LINE.exec(each)).filter(Boolean);
  points = lines.map(([, x, y]) => [number(x), number(y)]);
  picked = -1;
  draw();
}

// Two corners make a rectangle; every other shape is its points.
function outline() {
  const [one, two] = points;
  return holder.dataset.sketch === "rectangle" && two ? [one, [two[0], one[1]], two, [one[0], two[1]]] : points;
}

function draw() {
  const round = outline();
  const path = round.length ? `M ${round.map(pair).join(" L ")}${CLOSED.includes(holder.dataset.sketch) && round.length > 2 ? " Z" : ""}` : "";
  ground.setAttribute("d", path);
  line.setAttribute("d", path);
  dots.setAttribute("d", points.map((point) => `M ${pair(point)} h 0`).join(" "));
  mark.setAttribute("d", picked < 0 ? "" : `M ${pair(points[picked])} h 0`);
  const reach = 12 * layer.pixel;
  const [x, y] = cursor;
  cross.setAttribute("d", `M ${x - reach} ${y} H ${x + reach} M ${x} ${y - reach} V ${y + reach}`);
}

function changed(words) {
  field.value = points.map((point) => point.map((value) => +value.toFixed(1)).join(" ")).join("\n");
  said.textContent = words;
  draw();
}

const near = ([x, y]) => points.findIndex((point) => Math.hypot(point[0] - x, point[1] - y) < NEAR_PX * layer.pixel);
const place = (point) => point.map((value) => Math.round(value)).join(", ");

function move(index, to) {
  points[index] = cursor = to;
  changed(`Point ${index + 1} at ${place(to)}`);
}

function add(point) {
  if (points.length === most) return void (said.textContent = `${most} points are set: move one, or take one away`);
  points.push(point);
  cursor = point;
  changed(`Point ${points.length} set at ${place(point)}`);
}

function take(index) {
  if (index < 0 || index >= points.length) return;
  points.splice(index, 1);
  picked = -1;
  changed(`Point ${index + 1} taken away, ${points.length} left`);
}

function enter() {
  if (picked >= 0) picked = -1;
  else if (near(cursor) >= 0) picked = near(cursor);
  else add(cursor);
  said.textContent = picked < 0 ? said.textContent : `Point ${picked + 1} picked up: arrow keys move it`;
  draw();
}

function step([across, down], far) {
  const reach = (far ? 10 : 1) * layer.pixel;
  const to = layer.within([cursor[0] + across * reach, cursor[1] + down * reach]);
  if (picked >= 0) move(picked, to);
  else cursor = to;
  layer.reveal(to);
  draw();
}

const STEPS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] };
const KEYS = {
  Enter: enter,
  " ": enter,
  Delete: () => take(picked >= 0 ? picked : near(cursor)),
  Backspace: () => take(points.length - 1),
  "+": () => layer.zoom(2, cursor),
  "-": () => layer.zoom(0.5, cursor),
  0: () => layer.zoom(0),
};

layer.grab = (at) => {
  const index = near(at);
  return index < 0 ? null : (to) => move(index, to);
};
svg.addEventListener("layer-tap", ({ detail }) => add(detail));
svg.addEventListener("layer-view", draw);
svg.addEventListener("keydown", (event) => {
  const act = STEPS[event.key] ? () => step(STEPS[event.key], event.shiftKey) : KEYS[event.key];
  if (!act || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  act();
});
field.addEventListener("input", read);
for (const button of holder.querySelectorAll("[data-zoom]")) button.addEventListener("click", () => layer.zoom(Number(button.dataset.zoom)));
holder.querySelector("[data-undo]").addEventListener("click", () => take(points.length - 1));
for (const hidden of holder.querySelectorAll("[data-layer-tools], [data-layer-help]")) hidden.hidden = false;
svg.classList.add("is-drawn");
svg.setAttribute("tabindex", "0");
svg.setAttribute("role", "application");
read();
