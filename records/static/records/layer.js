// A picture that can be looked at closely: zoom, shift, and where on it a finger is. What is drawn on it is for others,
// who listen for "layer-tap" (a point [x, y] of the full-size picture) and "layer-view", and may set `grab`.
const SVG = "http://www.w3.org/2000/svg";
const STILL_PX = 5; // a finger that moves less has touched, not dragged
const CLOSEST_PX = 40; // of the full-size picture across the window

export function make(parent, tag, attributes = {}) {
  const made = document.createElementNS(SVG, tag);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  parent.append(made);
  return made;
}

export class Layer {
  constructor(svg) {
    const { width, height } = svg.viewBox.baseVal;
    Object.assign(this, { svg, whole: { x: 0, y: 0, width, height }, fingers: new Map(), grab: () => null });
    this.view = { ...this.whole };
    svg.addEventListener("pointerdown", (event) => this.#down(event));
    svg.addEventListener("pointermove", (event) => this.#move(event));
    for (const end of ["pointerup", "pointercancel"]) svg.addEventListener(end, (event) => this.#up(event));
    svg.addEventListener("wheel", (event) => this.#wheel(event), { passive: false });
  }

  // Pixels of the full-size picture to one of the screen.
  get pixel() {
    return 1 / this.svg.getScreenCTM().a;
  }

  at({ clientX, clientY }) {
    const { x, y } = new DOMPoint(clientX, clientY).matrixTransform(this.svg.getScreenCTM().inverse());
    return [x, y];
  }

  within([x, y]) {
    return [Math.min(Math.max(x, 0), this.whole.width), Math.min(Math.max(y, 0), this.whole.height)];
  }

  show({ x, y, width }) {
    const across = Math.min(Math.max(width, CLOSEST_PX), this.whole.width);
    const down = (across * this.whole.height) / this.whole.width;
    const keep = (value, most) => Math.min(Math.max(value, 0), most);
    this.view = { x: keep(x, this.whole.width - across), y: keep(y, this.whole.height - down), width: across, height: down };
    this.svg.setAttribute("viewBox", Object.values(this.view).join(" "));
    this.svg.classList.toggle("is-zoomed", across < this.whole.width);
    this.svg.dispatchEvent(new CustomEvent("layer-view"));
  }

  // Closer for a factor above one, with the point where it is; 0 shows the whole.
  zoom(factor, [x, y] = [this.view.x + this.view.width / 2, this.view.y + this.view.height / 2]) {
    if (!factor) return this.show(this.whole);
    const width = Math.min(Math.max(this.view.width / factor, CLOSEST_PX), this.whole.width);
    const share = width / this.view.width;
    return this.show({ x: x - (x - this.view.x) * share, y: y - (y - this.view.y) * share, width });
  }

  shift(across, down) {
    this.show({ ...this.view, x: this.view.x + across, y: this.view.y + down });
  }

  reveal([x, y]) {
    const margin = this.view.width / 10;
    const [right, bottom] = [this.view.x + this.view.width, this.view.y + this.view.height];
    const over = (value, low, high) => Math.min(value - margin - low, 0) + Math.max(value + margin - high, 0);
    this.shift(over(x, this.view.x, right), over(y, this.view.y, bottom));
  }

  #down(event) {
    if (event.button) return;
    this.svg.setPointerCapture(event.pointerId);
    const start = [event.clientX, event.clientY];
    this.fingers.set(event.pointerId, { start, last: start, moved: false });
    this.mover = this.fingers.size === 1 ? this.grab(this.at(event)) : null;
  }

  #move(event) {
    const finger = this.fingers.get(event.pointerId);
    if (!finger) return;
    const spread = this.#spread();
    const [dx, dy] = [event.clientX - finger.last[0], event.clientY - finger.last[1]];
    finger.moved ||= Math.hypot(event.clientX - finger.start[0], event.clientY - finger.start[1]) > STILL_PX;
    if (this.fingers.size === 1 && !finger.moved) return;
    finger.last = [event.clientX, event.clientY];
    if (this.fingers.size === 2) this.zoom(this.#spread() / spread || 1, this.at(event));
    else if (this.mover) this.mover(this.within(this.at(event)));
    else this.shift(-dx * this.pixel, -dy * this.pixel);
  }

  #up(event) {
    const finger = this.fingers.get(event.pointerId);
    this.fingers.delete(event.pointerId);
    if (!finger || finger.moved || this.fingers.size || this.mover || event.type === "pointercancel") return;
    this.svg.dispatchEvent(new CustomEvent("layer-tap", { detail: this.within(this.at(event)) }));
  }

  #spread() {
    const [one, two] = [...this.fingers.values()].map((finger) => finger.last);
    return two ? Math.hypot(one[0] - two[0], one[1] - two[1]) : 0;
  }

  // Without Ctrl the wheel scrolls the page, as everywhere; a pinch on a touchpad comes with it.
  #wheel(event) {
    if (!event.ctrlKey) return;
    event.preventDefault();
    this.zoom(Math.exp(-event.deltaY / 200), this.at(event));
  }
}
