// Finds the sections that hold every word asked for; no more than the page's own index is read.
const index = JSON.parse(document.getElementById("index").textContent);
const list = document.getElementById("found");
const count = document.getElementById("count");
const field = document.querySelector("main input[name=q]");

function search(query) {
  const words = query.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return [];
  return index
    .map((entry, at) => {
      const [, page, heading, text] = entry;
      const title = heading.toLowerCase();
      const all = `${page} ${heading} ${text}`.toLowerCase();
      if (!words.every((word) => all.includes(word))) return null;
      return { entry, at, weight: words.filter((word) => title.includes(word)).length * 2 + (title === query.toLowerCase() ? 3 : 0) };
    })
    .filter(Boolean)
    .sort((a, b) => b.weight - a.weight || a.at - b.at);
}

function show(query) {
  const found = search(query);
  count.textContent = query.trim() === "" ? "" : `${found.length} found${found.length > 60 ? ", 60 shown" : ""}`;
  list.replaceChildren(
    ...found.slice(0, 60).map(({ entry: [url, page, heading, text] }) => {
      const item = document.createElement("li");
      const link = document.createElement("a");
      link.href = url;
      link.textContent = heading;
      const where = document.createElement("small");
      where.textContent = page === heading ? "" : ` in ${page}`;
      const says = document.createElement("p");
      says.textContent = text.length > 180 ? `${text.slice(0, 180)} …` : text;
      item.append(link, where, says);
      return item;
    }),
  );
}

field.value = new URLSearchParams(location.search).get("q") ?? "";
field.addEventListener("input", () => show(field.value));
show(field.value);
field.focus();
