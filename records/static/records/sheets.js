// A table of many columns stands in blocks on a narrow screen: each cell is given the heading of its column as a label, and the
// parts keep their roles, since a browser forgets them once they are not laid out as a table.
const ROLES = { TABLE: "table", THEAD: "rowgroup", TBODY: "rowgroup", TFOOT: "rowgroup", TR: "row", TD: "cell" };

const LONG = 16; // signs, from which a cell takes the whole width

function wordsOf(head) {
  return head.querySelector(".unseen") ? "" : head.textContent.trim().replace(/\s+/g, " ");
}

function stack(sheet) {
  const heads = [...(sheet.tHead?.rows[0]?.cells ?? [])].map(wordsOf);
  const fits = sheet.offsetWidth <= (sheet.parentElement?.clientWidth ?? 0);
  if (heads.length < 3 || (heads.length === 3 && fits)) return;
  sheet.classList.add("sheet-stacks");
  for (const part of [sheet, ...sheet.querySelectorAll("thead, tbody, tfoot, tr, td")]) part.setAttribute("role", ROLES[part.tagName]);
  for (const head of sheet.querySelectorAll("th")) head.setAttribute("role", head.closest("thead") ? "columnheader" : "rowheader");
  for (const row of sheet.querySelectorAll("tbody tr, tfoot tr")) {
    for (const cell of row.cells) {
      cell.classList.toggle("wide", cell.colSpan > 1 || cell.textContent.trim().length > LONG);
      if (cell.tagName === "TD" && cell.colSpan === 1 && heads[cell.cellIndex]) cell.dataset.label = heads[cell.cellIndex];
    }
  }
}

function stackAll(part) {
  for (const sheet of part.querySelectorAll("table.sheet")) stack(sheet);
}

stackAll(document);
document.addEventListener("htmx:load", (event) => stackAll(event.detail.elt));
