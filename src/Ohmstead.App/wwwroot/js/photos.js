// A photo is sent the moment it is chosen: how far it has come is shown, and while it cannot be saved it stays here and is sent
// again until it is. The entry's id is made here once, so that sending again keeps one; it ends in the window's key, by
// which the screen knows its own.
(() => {
  const most = 40e6, pause = 3000;
  let notKept = 0;
  const newId = key => {
    const hex = [...crypto.getRandomValues(new Uint8Array(10))].map(b => b.toString(16).padStart(2, "0")).join("");
    return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${key}`;
  };
  const line = (list, name) => {
    const row = document.createElement("p"), said = document.createElement("span"), bar = document.createElement("progress");
    row.className = "sending"; said.textContent = name; bar.max = 1; bar.value = 0; bar.setAttribute("aria-label", `Sending ${name}`);
    row.append(said, bar); list.append(row);
    return { row, said, bar };
  };
  const send = (file, address, shown) => {
    const request = new XMLHttpRequest();
    const refused = why => {
      shown.bar.hidden = true; shown.row.classList.add("wrong"); shown.said.textContent = `${file.name}: ${why}`;
      const button = document.createElement("button");
      button.type = "button"; button.className = "can"; button.textContent = "OK";
      button.onclick = () => shown.row.remove();
      shown.row.append(button);
    };
    const again = why => {
      shown.said.textContent = `${file.name}: not saved yet. ${why} Leave this page open: it is sent again by itself.`;
      setTimeout(() => { notKept--; send(file, address, shown); }, pause);
    };
    // A device whose pass has run out proves itself first. A long file that is refused before it was read ends as if nobody had answered.
    const anew = why => {
      if (!window.ohmstead.isDevice()) { again(why); return; }
      window.ohmstead.prove("page").then(() => again(why), wrong => {
        if (wrong.status !== 403) { again(why); return; }
        notKept--;
        refused(window.ohmstead.notLetIn);
      });
    };
    if (file.size > most) { refused("larger than 40 MB. A smaller picture will do."); return; }
    notKept++;
    request.upload.onprogress = e => { if (e.lengthComputable) shown.bar.value = e.loaded / e.total; };
    request.onload = () => {
      if (request.status === 401) { anew("The bench had to be shown which device this is."); return; }
      if (request.status >= 500) { again(request.responseText || "Something went wrong in Ohmstead."); return; }
      notKept--;
      if (request.status < 300) shown.row.remove(); else refused(request.responseText || "not saved");
    };
    request.onerror = request.ontimeout = () => anew("Ohmstead does not answer.");
    request.open("POST", address); request.send(file);
  };
  document.addEventListener("change", e => {
    const input = e.target;
    if (!input.matches?.("input[type=file][data-photos]")) return;
    const list = document.getElementById(input.dataset.list) ?? input.parentElement;
    for (const file of input.files) {
      const address = new URL(input.dataset.photos, location.origin);
      address.searchParams.set("entry", newId(input.dataset.window));
      if (input.dataset.about) address.searchParams.set("about", input.dataset.about);
      send(file, address, line(list, file.name));
    }
    input.value = "";
  });
  // A person who leaves now would lose what waits here.
  addEventListener("beforeunload", e => { if (notKept > 0) e.preventDefault(); });
  // Where on a picture a press was, from 0 to 1 across and down.
  window.ohmstead = Object.assign(window.ohmstead ?? {}, {
    photosWait: () => notKept > 0,
    entryId: newId,
    placeOn: (picture, x, y) => {
      const r = picture.getBoundingClientRect();
      return [Math.min(1, Math.max(0, (x - r.left) / r.width)), Math.min(1, Math.max(0, (y - r.top) / r.height))];
    },
  });
})();
