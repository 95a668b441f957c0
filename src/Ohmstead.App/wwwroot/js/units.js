// A number and its unit stay on one line, and so do a post and its mark: the space between them does not break.
(() => {
  const pairs = [
    /(\d|OL) (?=(?:[GMk]?Ω|[mk]?V|m?A|W|°C|Hz|%|min|mm)(?![\p{L}\d]))/gu,
    /\b(post|lug|blade|track|step|cup) (?=[\p{Lu}\d][\p{L}\d]?(?![\p{L}\d]))/giu,
  ];
  const left = "textarea,pre,select,script,style,svg";
  const join = text => {
    if (text.parentElement?.closest(left) !== null) return;
    const joined = pairs.reduce((words, pair) => words.replace(pair, "$1\u00a0"), text.data);
    if (joined !== text.data) text.data = joined;
  };
  const look = node => {
    if (node.nodeType === Node.TEXT_NODE) join(node);
    if (node.nodeType !== Node.ELEMENT_NODE) return;
    const texts = document.createTreeWalker(node, NodeFilter.SHOW_TEXT);
    while (texts.nextNode()) join(texts.currentNode);
  };
  new MutationObserver(all => {
    for (const one of all)
      if (one.type === "characterData") look(one.target);
      else one.addedNodes.forEach(look);
  }).observe(document.body, { subtree: true, childList: true, characterData: true });
  look(document.body);
})();
