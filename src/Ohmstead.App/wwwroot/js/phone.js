// A phone's page has no live connection: it is fetched anew when its photos are kept, unless a reading is half typed.
(() => {
  const list = document.getElementById("sending");
  if (location.pathname !== "/phone" || !list) return;
  new MutationObserver(changes => {
    if (list.children.length === 0 && changes.some(c => c.removedNodes.length > 0) && !document.getElementById("shown")?.value) location.reload();
  }).observe(list, { childList: true });
})();
