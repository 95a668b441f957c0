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
