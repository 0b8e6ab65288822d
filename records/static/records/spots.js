// Touching a picture fills in the place of a point, arrow keys move it. Without this script the two numbers are typed.
const SVG = "http://www.w3.org/2000/svg";
const field = (name) => document.getElementById(`id_${name}`);
const [photo, outline, across, down] = ["photo", "outline", "x_pct", "y_pct"].map(field);
const grounds = [...document.querySelectorAll("[data-ground]")];
const number = (input) => parseFloat(input.value.replace(",", "."));

function mark(ground) {
  const picture = ground.querySelector("svg");
  const { width, height } = picture.viewBox.baseVal;
  for (const old of picture.querySelectorAll("[data-mark]")) old.remove();
  const [x, y] = [number(across), number(down)];
  if (Number.isNaN(x) || Number.isNaN(y)) return;
  for (const look of ["spot-mark-light", "spot-mark"]) {
    const ring = document.createElementNS(SVG, "circle");
    for (const [name, value] of Object.entries({ cx: (x * width) / 100, cy: (y * height) / 100, r: 12, class: look, "data-mark": "" }))
      ring.setAttribute(name, value);
    picture.append(ring);
  }
}

function show() {
  const chosen = photo.value ? `photo-${photo.value}` : outline.value ? `outline-${outline.value}` : "";
  for (const ground of grounds) {
    ground.hidden = ground.dataset.ground !== chosen;
    if (!ground.hidden) mark(ground);
  }
}

function place(x, y) {
  const within = (value) => Math.min(Math.max(value, 0), 100).toFixed(1);
  [across.value, down.value] = [within(x), within(y)];
  show();
}

for (const ground of grounds) {
  const picture = ground.querySelector("svg");
  picture.classList.add("spot-picker");
  picture.setAttribute("tabindex", "0");
  picture.setAttribute("role", "application");
  picture.addEventListener("click", (event) => {
    const box = picture.getBoundingClientRect();
    place(((event.clientX - box.left) / box.width) * 100, ((event.clientY - box.top) / box.height) * 100);
  });
  picture.addEventListener("keydown", (event) => {
    const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    if (!step) return;
    event.preventDefault();
    const far = event.shiftKey ? 5 : 1;
    place((number(across) || 0) + step[0] * far, (number(down) || 0) + step[1] * far);
  });
}

for (const input of [photo, outline, across, down]) input.addEventListener("input", show);
photo.addEventListener("change", () => photo.value && (outline.value = ""));
document.querySelector("[data-spot-help]").hidden = false;
show();
