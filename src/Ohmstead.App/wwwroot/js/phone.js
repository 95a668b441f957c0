// A phone's page has no live connection: it is fetched anew when its photos are kept, unless a reading is half typed.
(() => {
  const list = document.getElementById("sending");
  if (location.pathname !== "/phone" || !list) return;
  new MutationObserver(changes => {
    if (list.children.length === 0 && changes.some(c => c.removedNodes.length > 0) && !document.getElementById("shown")?.value) location.reload();
  }).observe(list, { childList: true });
})();

// Its form leaves the page: it goes once the device has proved itself, or what was typed would be lost with a pass that has run out.
document.addEventListener("submit", async e => {
  const form = e.target;
  if (form.getAttribute("action") !== "/phone/reading") return;
  e.preventDefault();
  const button = form.querySelector("[type=submit]"), says = document.getElementById("says");
  button.disabled = true;
  try {
    await window.ohmstead.prove("page");
    form.submit();
  } catch (why) {
    button.disabled = false;
    says.className = "wrong";
    says.setAttribute("role", "alert");
    says.textContent = why.status === 403 ? window.ohmstead.notLetIn : "The bench does not answer. What you typed is still here. Enter it again.";
  }
});
