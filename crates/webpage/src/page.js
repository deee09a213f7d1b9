"use strict";
(() => {
  const lists = new Map();
  for (const element of document.querySelectorAll("[data-lit]")) {
    for (const clause of element.dataset.lit.split(" ")) {
      if (!lists.has(clause)) lists.set(clause, []);
      lists.get(clause).push(element);
    }
  }
  let lit = [];
  const light = (clauses) => {
    for (const element of lit) element.classList.remove("lit", "own");
    lit = [];
    for (const clause of clauses) {
      for (const element of lists.get(clause) ?? []) {
        element.classList.add("lit");
        const own = element.dataset.own?.split(" ") ?? [];
        if (own.includes(clause)) element.classList.add("own");
        lit.push(element);
      }
    }
  };
  const belonging = (target) => {
    const element = target?.closest?.("[data-lit]");
    return (element?.dataset.own ?? element?.dataset.lit)?.split(" ") ?? [];
  };

  document.addEventListener("pointerover", (event) => {
    const clauses = belonging(event.target);
    light(clauses.length ? clauses : belonging(document.activeElement));
  });
  document.addEventListener("focusin", (event) => light(belonging(event.target)));
  document.addEventListener("focusout", () => light([]));

  const lightTarget = () => light(belonging(document.getElementById(location.hash.slice(1))));
  addEventListener("hashchange", lightTarget);
  lightTarget();

  // On a small screen the words come before what explains them.
  if (matchMedia("(max-width: 46rem)").matches) {
    for (const fold of document.querySelectorAll("details.fold")) fold.open = false;
  }

  // The words have many numbers; by Tab one goes through the clauses, and by the left arrow to a clause's words.
  for (const number of document.querySelectorAll(".number[data-own]")) number.tabIndex = -1;

  const nameOf = (clause) => document.querySelector(`#c${clause} .name`);
  const wordsOf = (clause) => {
    const all = (lists.get(clause) ?? []).filter((element) => element.closest(".words"));
    const first = all.find((element) => element.dataset.own?.split(" ").includes(clause)) ?? all[0];
    if (first && !first.hasAttribute("tabindex")) first.tabIndex = -1;
    return first;
  };

  // Words that stay beside their clauses scroll within themselves, so that the page stands still; a cell of a wide table comes to its middle.
  const reveal = (element) => {
    const pane = element?.closest(".words");
    if (!pane) return;
    const [at, box] = [element.getBoundingClientRect(), pane.getBoundingClientRect()];
    if (pane.scrollWidth > pane.clientWidth + 1) {
      pane.scrollLeft += (at.left + at.right) / 2 - (box.left + box.right) / 2;
    }
    if (pane.scrollHeight <= pane.clientHeight) return;
    if (at.top < box.top + 24) pane.scrollTop += at.top - box.top - 24;
    else if (at.bottom > box.bottom - 24) pane.scrollTop += at.bottom - box.bottom + 24;
  };
  let last = null;
  // Of clauses that share their words the one that one came from.
  const oneOf = (clauses) => (clauses.includes(last) ? last : clauses[0]);
  const goTo = (element) => {
    const clause = oneOf(belonging(element));
    if (clause !== undefined) {
      last = clause;
      reveal(wordsOf(clause));
    }
    element.focus({ preventScroll: true });
    reveal(element);
    const card = element.closest(".clause, .warning") ?? element;
    card.scrollIntoView({ block: "nearest", inline: "nearest" });
    // Where the words stand above the card, both are shown if they fit.
    const words = clause !== undefined && wordsOf(clause)?.getBoundingClientRect();
    const over = words ? words.top - parseFloat(getComputedStyle(document.documentElement).scrollPaddingTop) : 0;
    if (over < 0 && card.getBoundingClientRect().bottom - over < innerHeight) scrollBy(0, over);
  };

  // Which clauses are shown.
  const chosen = () => document.querySelector("input[name=shown]:checked")?.id.slice("show-".length) ?? "every";
  const choose = (kind) => {
    const choice = document.getElementById(`show-${kind}`);
    if (choice && !choice.disabled) choice.checked = true;
  };

  document.addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    const way = event.target.closest?.("a[data-show]");
    if (way) {
      choose(way.dataset.show);
    } else if (event.target.closest?.(".look a")) {
      choose("every");
    }
    const [clause] = belonging(event.target);
    if (clause !== undefined) last = clause;
    const number = event.target.closest?.(".number[data-own]");
    const name = event.target.closest?.(".clause .name");
    const to = number ? nameOf(belonging(number)[0]) : name ? wordsOf(belonging(name)[0]) : null;
    if (to) {
      event.preventDefault();
      goTo(to);
    }
  });

  // Clauses or warnings of a kind in turn: after the last the first again.
  const inTurn = (kind, step) => {
    const all = [...document.querySelectorAll(kind === "missed" ? ".missed" : `.clause.${kind}`)];
    if (!all.length) return null;
    if (![kind, "every"].includes(chosen())) choose("every");
    const here = document.activeElement?.closest(".clause, .warning, .words [data-lit]");
    const card = here?.matches(".words *") ? document.getElementById(`c${oneOf(belonging(here))}`) : here;
    const after = card ? all.findIndex((one) => card.compareDocumentPosition(one) & Node.DOCUMENT_POSITION_FOLLOWING) : 0;
    const at = all.indexOf(card);
    const next = after < 0 ? all.length : after;
    const to = step > 0 ? next : at >= 0 ? at - 1 : next - 1;
    const found = all[(to + all.length) % all.length];
    if (kind !== "missed") return found.querySelector(".name");
    reveal(document.getElementById(found.id.replace("v", "u"))?.nextElementSibling);
    return found;
  };
  // From clause to clause, those that are shown.
  const along = (step) => {
    const kind = chosen();
    const all = [...document.querySelectorAll(kind === "every" ? ".clause" : `.clause.${kind}`)];
    const ends = { first: 0, last: all.length - 1 };
    const here = last === null ? -1 : all.indexOf(document.getElementById(`c${last}`));
    const to = ends[step] ?? Math.max(here + step, 0);
    return all[to]?.querySelector(".name");
  };

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = document.activeElement;
    if (at?.matches("input, summary")) return;
    const turns = { d: ["doubtful", 1], D: ["doubtful", -1], p: ["left", 1], P: ["left", -1], n: ["missed", 1], N: ["missed", -1] };
    const clause = oneOf(belonging(at));
    if (clause !== undefined) last = clause;
    // Elsewhere on the page the arrows scroll it, as they do anywhere.
    const isAmong = at?.closest("main [data-lit], .warning") && last !== null;
    const next = turns[event.key]
      ? inTurn(...turns[event.key])
      : isAmong &&
        {
          ArrowDown: () => along(1),
          ArrowUp: () => along(-1),
          Home: () => along("first"),
          End: () => along("last"),
          ArrowLeft: () => wordsOf(last),
          ArrowRight: () => nameOf(last),
          Escape: () => (at.blur(), null),
        }[event.key]?.();
    if (next) {
      event.preventDefault();
      goTo(next);
    }
  });
})();
