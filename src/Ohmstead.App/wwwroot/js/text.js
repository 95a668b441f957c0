// Puts the caret on a line of a text and brings it into view.
window.ohmstead = Object.assign(window.ohmstead ?? {}, {
  goToLine: (id, line, column) => {
    const area = document.getElementById(id);
    if (!area) return;
    const lines = area.value.split("\n");
    const start = lines.slice(0, line - 1).reduce((n, l) => n + l.length + 1, 0);
    area.focus();
    area.setSelectionRange(start + Math.max(0, column - 1), start + (lines[line - 1] ?? "").length);
    area.scrollTop = Math.max(0, (line - 4) * parseFloat(getComputedStyle(area).lineHeight));
  },
});
// Line numbers beside a text: as many as it has lines, and where it is scrolled to.
(() => {
  const numbers = text => text.matches?.("textarea.code") ? text.parentElement.querySelector(".line-numbers") : null;
  document.addEventListener("input", e => {
    const beside = numbers(e.target);
    if (!beside) return;
    const lines = e.target.value.split("\n").length;
    if (lines !== beside.textContent.split("\n").length) beside.textContent = Array.from({ length: lines }, (_, n) => n + 1).join("\n");
    beside.scrollTop = e.target.scrollTop;
  });
  document.addEventListener("scroll", e => { const beside = numbers(e.target); if (beside) beside.scrollTop = e.target.scrollTop; }, true);
})();
