// A photo is sent the moment it is chosen: how far it has come is shown, and what failed is sent again at a press. The entry's
// id is made here once, so that sending again keeps one; it ends in the window's key, by which the screen knows its own.
(() => {
  const most = 40e6;
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
    const failed = (why, again) => {
      shown.bar.hidden = true; shown.row.classList.add("wrong"); shown.said.textContent = `${file.name}: ${why}`;
      const button = document.createElement("button");
      button.type = "button"; button.className = "can"; button.textContent = again ? "Try again" : "Put away";
      button.onclick = () => {
        button.remove();
        if (!again) { shown.row.remove(); return; }
        shown.bar.hidden = false; shown.row.classList.remove("wrong"); shown.said.textContent = file.name;
        send(file, address, shown);
      };
      shown.row.append(button);
    };
    if (file.size > most) { failed("larger than 40 MB, the most that is taken", false); return; }
    request.upload.onprogress = e => { if (e.lengthComputable) shown.bar.value = e.loaded / e.total; };
    request.onload = () => request.status < 300 ? shown.row.remove() : failed(request.responseText || "not taken", request.status >= 500);
    request.onerror = request.ontimeout = () => failed("not sent, the tool does not answer", true);
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
  // Where on a picture a press was, from 0 to 1 across and down.
  window.ohmstead = Object.assign(window.ohmstead ?? {}, {
    placeOn: (picture, x, y) => {
      const r = picture.getBoundingClientRect();
      return [Math.min(1, Math.max(0, (x - r.left) / r.width)), Math.min(1, Math.max(0, (y - r.top) / r.height))];
    },
  });
})();
