// The other usual unit under a quantity, while one types. The echo element names its field and the choice of units;
// data-echo holds, for each unit, [factor, offset, unit to show], as records/units/echo.py makes it.
function readNumber(text) {
  const plain = text.trim().replace(",", ".").replace("\u2212", "-");
  return /^[-+]?\d*\.?\d+(e[-+]?\d{1,3})?$/i.test(plain) ? Number(plain) : NaN;
}

function showEcho(echo) {
  const field = document.getElementById(echo.dataset.echoFor);
  const unit = document.getElementById(echo.dataset.echoUnit);
  if (!field || !unit) return;
  const [factor, offset, name] = JSON.parse(echo.dataset.echo)[unit.value] ?? [];
  const value = readNumber(field.value) * factor + offset;
  const thin = name === "in" && value !== 0 && Math.abs(value) < 0.1; // below it the trade says thou
  const [shown, called] = thin ? [value * 1000, "thou"] : [value, name];
  echo.textContent = Number.isFinite(shown) ? `= ${Number(shown.toPrecision(3))}\u2009${called}` : "";
}

for (const echo of document.querySelectorAll("[data-echo]")) {
  for (const id of [echo.dataset.echoFor, echo.dataset.echoUnit]) {
    document.getElementById(id)?.addEventListener("input", () => showEcho(echo));
  }
}
