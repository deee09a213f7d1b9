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

  // The words have many numbers; by Tab one goes through the clauses, and by the left arrow to a clause's words.
  const numbers = [...document.querySelectorAll(".number[data-own]")];
  for (const number of numbers) number.tabIndex = -1;

  const nameOf = (clause) => document.querySelector(`#c${clause} .name`);
  const wordsOf = (clause) => {
    const own = numbers.find((number) => number.dataset.own.split(" ").includes(clause));
    const first = own ?? (lists.get(clause) ?? []).find((element) => element.closest(".words"));
    if (first && !first.hasAttribute("tabindex")) first.tabIndex = -1;
    return first;
  };

  // Words that stay beside their clauses scroll within themselves, so that the page stands still.
  const reveal = (element) => {
    const pane = element?.closest(".words");
    if (!pane || pane.scrollHeight <= pane.clientHeight) return;
    const [at, box] = [element.getBoundingClientRect(), pane.getBoundingClientRect()];
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

  // What goes on beyond its pane says so.
  const told = () => {
    for (const pane of document.querySelectorAll(".table")) {
      pane.classList.toggle("wide", pane.scrollWidth > pane.clientWidth + 1);
    }
  };
  told();
  addEventListener("resize", told);

  document.addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
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

  // The unread numbers in turn: the next one's card, after the last of them the first again.
  const missed = [...document.querySelectorAll(".missed")];
  const nextMissed = (step) => {
    if (!missed.length) return null;
    const at = missed.indexOf(document.activeElement?.closest(".missed"));
    const here = at < 0 && step < 0 ? 0 : at;
    const card = missed[(here + step + missed.length) % missed.length];
    reveal(document.getElementById(card.id.replace("v", "u"))?.nextElementSibling);
    return card;
  };

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = document.activeElement;
    if (at?.matches("input, summary")) return;
    // A pane of words that has the focus itself is scrolled by the arrows.
    if (at?.matches(".words") && event.key.startsWith("Arrow")) return;
    const names = [...document.querySelectorAll(".clause .name")].filter((name) => name.offsetParent);
    const clause = oneOf(belonging(at)) ?? last;
    const here = clause === null ? -1 : names.indexOf(nameOf(clause));
    const next = {
      ArrowDown: () => names[here + 1],
      ArrowUp: () => names[Math.max(here - 1, 0)],
      Home: () => names[0],
      End: () => names[names.length - 1],
      ArrowLeft: () => (clause === null ? null : wordsOf(clause)),
      ArrowRight: () => (clause === null ? null : nameOf(clause)),
      n: () => nextMissed(1),
      N: () => nextMissed(-1),
      Escape: () => (at.blur(), null),
    }[event.key]?.();
    if (next) {
      event.preventDefault();
      goTo(next);
    }
  });
})();
