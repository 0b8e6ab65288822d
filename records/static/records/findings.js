// Beside the choice of a word: what it means, and the stability that is usual for it until the person has chosen one.
for (const meaning of document.querySelectorAll("[data-meaning-of]")) {
  const choice = document.getElementById(meaning.dataset.meaningOf);
  const stabilities = document.querySelectorAll('input[name="stability"]');
  let isUsual = document.querySelector('input[name="stability"]:checked')?.value === "";
  for (const stability of stabilities) stability.addEventListener("change", () => (isUsual = stability.value === ""));

  choice.addEventListener("change", () => {
    const term = document.querySelector(`[data-term="${choice.value}"]`);
    meaning.textContent = term?.querySelector("[data-meaning]").textContent ?? "";
    if (!isUsual) return;
    const usual = term?.dataset.stability || "not_assessed";
    for (const stability of stabilities) stability.checked = stability.value === (term ? usual : "");
  });
}
