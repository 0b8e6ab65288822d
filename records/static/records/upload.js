// Chosen photographs are sent one by one; each line shows how far its file is and what became of it.
// Without this script the form sends them all together and the answer says the same.
const form = document.getElementById("upload");
const input = form.querySelector('input[type="file"]');
const section = document.querySelector("[data-sending]");
const list = document.querySelector("[data-sent]");
const words = document.querySelector("[data-sending-words]");
const button = form.querySelector('button[type="submit"]');
const limit = Number(input.dataset.limitMb) * 2 ** 20;
let waiting = [];
let busy = false;

function add(parent, tag, name, text = "") {
  const made = document.createElement(tag);
  made.className = name;
  made.textContent = text;
  parent.append(made);
  return made;
}

function show(line, state, shape, said) {
  line.row.dataset.state = state;
  line.state.className = `state state-${state}`;
  line.state.textContent = "";
  add(line.state, "span", "state-shape", shape).setAttribute("aria-hidden", "true");
  line.state.append(` ${said}`);
}

function lineOf(file) {
  const row = add(list, "li", "sent");
  add(row, "span", "sent-picture").setAttribute("aria-hidden", "true");
  const text = add(row, "p", "sent-words");
  add(text, "span", "sent-name", file.name);
  const line = { file, row, text, state: add(text, "span", "state") };
  show(line, "open", "○", `waiting, ${(file.size / 1e6).toFixed(1)} MB`);
  return line;
}

function pieceOf(file) {
  const piece = new FormData(form);
  piece.delete("sending"); // the mark of the whole form; a file sent twice is known by its digest
  piece.set("files", file, file.name);
  return piece;
}

// A large picture takes seconds to be unfolded: the line counts them, so that it does not look dead.
function tick(line) {
  const began = Date.now();
  const say = () => show(line, "open", "○", `arrived, being read for ${Math.round((Date.now() - began) / 1000)} s`);
  show(line, "open", "○", "arrived, being read");
  return setInterval(say, 1000);
}

function send(line) {
  const request = new XMLHttpRequest();
  const bar = add(line.text, "progress", "");
  bar.setAttribute("aria-label", `Sending ${line.file.name}`);
  let reading = 0;
  show(line, "open", "○", "on its way");
  request.upload.onprogress = ({ loaded, total }) => {
    bar.max = total;
    bar.value = loaded;
    if (loaded === total) reading ||= tick(line);
  };
  return new Promise((resolve) => {
    request.onloadend = () => {
      clearInterval(reading);
      bar.remove();
      resolve(request);
    };
    request.open("POST", form.action);
    request.setRequestHeader("Register-Piece", "1");
    request.send(pieceOf(line.file));
  });
}

function whyNot(request) {
  if (!request.status) return "not sent: the connection was lost";
  if (request.responseURL.includes("/sign-in/")) return "not sent: sign in again in another window";
  return `not sent: the server answered ${request.status}`;
}

async function settle(line) {
  if (line.file.size > limit) {
    show(line, "blocked", "■", `refused: more than the ${input.dataset.limitMb} MB a picture may have`);
    return true;
  }
  const request = await send(line);
  const made = document.createElement("template");
  made.innerHTML = request.status === 200 ? request.responseText.trim() : "";
  const answered = made.content.querySelector("li.sent");
  if (answered) line.row.replaceWith(answered);
  else show(line, "blocked", "■", whyNot(request));
  return Boolean(answered);
}

function tell() {
  const count = (...states) => states.reduce((sum, each) => sum + list.querySelectorAll(`[data-state="${each}"]`).length, 0);
  const refused = count("blocked");
  const kept = count("done", "look");
  words.textContent = `${kept} kept${refused ? `, ${refused} not kept: each says why` : ""}.`;
  if (waiting.length) words.textContent += " Press again to send what was lost on the way.";
  document.querySelector("[data-onward]").hidden = !kept;
}

input.addEventListener("change", () => {
  section.hidden = false;
  for (const line of waiting) line.row.remove();
  waiting = [...input.files].map(lineOf);
  words.textContent = `${waiting.length} chosen.`;
});

form.addEventListener("submit", async (event) => {
  if (!waiting.length) return; // the server says what is missing
  event.preventDefault();
  if (busy) return;
  busy = true;
  button.disabled = true;
  const lost = [];
  for (const [index, line] of waiting.entries()) {
    words.textContent = `Sending ${index + 1} of ${waiting.length}.`;
    if (!(await settle(line))) lost.push(line);
  }
  waiting = lost;
  input.value = "";
  busy = button.disabled = false;
  tell();
  section.setAttribute("tabindex", "-1");
  section.focus();
});

addEventListener("beforeunload", (event) => busy && event.preventDefault());
