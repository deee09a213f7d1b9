// Makes the reading desk quicker to use. Every page works without it.

const said = document.getElementById("said");
const clauses = [...document.querySelectorAll(".clause")];

// The words of a clause and the clause light each other.
function light(ids, on) {
  for (const id of ids) {
    document.getElementById(id)?.classList.toggle("lit", on);
    for (const words of document.querySelectorAll(`[data-clauses~="${id}"]`)) words.classList.toggle("lit", on);
  }
}
for (const words of document.querySelectorAll("[data-clauses]")) {
  const ids = words.dataset.clauses.split(" ").filter(Boolean);
  words.addEventListener("mouseenter", () => light(ids, true));
  words.addEventListener("mouseleave", () => light(ids, false));
  words.addEventListener("click", () => go(document.getElementById(ids[0])));
}
for (const clause of clauses) {
  clause.addEventListener("mouseenter", () => light([clause.id], true));
  clause.addEventListener("mouseleave", () => light([clause.id], false));
  clause.addEventListener("focusin", () => light([clause.id], true));
  clause.addEventListener("focusout", () => light([clause.id], false));
}

function go(clause) {
  if (!clause) return;
  clause.focus();
  clause.scrollIntoView({ block: "nearest" });
  document.querySelector(`[data-clauses~="${clause.id}"]`)?.scrollIntoView({ block: "nearest" });
}

// The clause that has the focus, or has something in it that has.
const here = () => clauses.indexOf(document.activeElement?.closest(".clause"));

async function confirm(clause) {
  const form = clause.querySelector("form.confirm");
  if (!form) return;
  const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)) });
  if (!answer.ok) {
    said.textContent = "That wasn't confirmed: load the page again to see what was changed meanwhile.";
    return;
  }
  const done = document.createElement("p");
  done.className = "met";
  done.textContent = "✓ confirmed";
  form.replaceWith(done);
  clause.classList.remove("draft");
  const count = document.getElementById("confirmed");
  count.textContent = String(Number(count.textContent) + 1);
  said.textContent = `${clause.querySelector("h3").textContent} is confirmed.`;
  go(clauses.find((other, at) => at > clauses.indexOf(clause) && other.classList.contains("draft")) ?? clause);
}

for (const clause of clauses) {
  clause.querySelector("form.confirm")?.addEventListener("submit", (event) => {
    event.preventDefault();
    confirm(clause);
  });
}

document.addEventListener("keydown", (event) => {
  if (!clauses.length || event.ctrlKey || event.altKey || event.metaKey) return;
  if (event.target.closest("input, textarea, select")) return;
  const at = here();
  if (event.key === "j") go(clauses[Math.min(at + 1, clauses.length - 1)]);
  else if (event.key === "k") go(clauses[Math.max(at - 1, 0)]);
  else if (event.key === "c" && at >= 0) confirm(clauses[at]);
  else if ((event.key === "e" || event.key === "g") && at >= 0) clauses[at].querySelector(`a[data-key="${event.key}"]`)?.click();
});

// The joint is drawn again as the slider moves; without this, the button does it.
const moved = document.getElementById("moved");
const moving = document.getElementById("moving");
if (moved && moving) {
  moved.form.querySelector("button").hidden = true;
  moved.addEventListener("input", () => {
    moving.src = moving.dataset.src + moved.value;
    moving.alt = `The joint at ${moved.value} percent of its way: below zero it closes, above it opens. The words stand in the picture.`;
  });
}
