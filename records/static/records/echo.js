// The other usual unit under a quantity: the echo element names its field and, for each unit, "factor offset unit".
// <p class="quantity-echo" data-echo-for="id_current" data-echo-unit="id_current_unit" data-echo='{"A/dm²": [9.29, 0, "A/ft²"]}'>
function readNumber(text) {
  const plain = text.trim().replace(",", ".");
  return /^[-+]?\d*\.?\d+(e[-+]?\d{1,3})?$/i.test(plain) ? Number(plain) : NaN;
}

function showEcho(echo) {
  const field = document.getElementById(echo.dataset.echoFor);
  const unit = document.getElementById(echo.dataset.echoUnit);
  const [factor, offset, name] = JSON.parse(echo.dataset.echo)[unit ? unit.value : ""] ?? [];
  const value = readNumber(field.value) * factor + offset;
  echo.textContent = Number.isFinite(value) ? `= ${Number(value.toPrecision(3))}\u2009${name}` : "";
}

for (const echo of document.querySelectorAll("[data-echo]")) {
  for (const id of [echo.dataset.echoFor, echo.dataset.echoUnit]) {
    document.getElementById(id)?.addEventListener("input", () => showEcho(echo));
  }
  showEcho(echo);
}
