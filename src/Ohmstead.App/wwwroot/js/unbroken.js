// A number keeps its unit and a post its number: the space between them is made one that no line ends at. The rule comes with the page.
(() => {
  const { unbroken, held } = document.documentElement.dataset;
  if (!unbroken) return;
  const rule = new RegExp(unbroken, "g");
  const hold = text => {
    if (!text.parentElement || text.parentElement.closest("textarea,option,script,style,svg,pre,code")) return;
    const words = text.data.replace(rule, held);
    if (words !== text.data) text.data = words;
  };
  const holdAll = node => {
    if (node.nodeType === Node.TEXT_NODE) { hold(node); return; }
    const texts = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) hold(texts.currentNode);
  };
  holdAll(document.body);
  new MutationObserver(changes => {
    for (const change of changes) {
      if (change.type === "characterData") hold(change.target);
      for (const node of change.addedNodes) holdAll(node);
    }
  }).observe(document.body, { childList: true, characterData: true, subtree: true });
})();
