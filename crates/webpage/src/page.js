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
  const numbers = [...document.querySelectorAll(".number")];
  for (const number of numbers) number.tabIndex = -1;

  const goTo = (element) => {
    element.focus({ preventScroll: true });
    element.scrollIntoView({ block: "nearest", inline: "nearest" });
  };
  const nameOf = (clause) => document.querySelector(`#c${clause} .name`);
  const wordsOf = (clause) => {
    const own = numbers.find((number) => number.dataset.own.split(" ").includes(clause));
    const first = own ?? (lists.get(clause) ?? []).find((element) => element.closest(".words"));
    if (first && !first.hasAttribute("tabindex")) first.tabIndex = -1;
    return first;
  };

  document.addEventListener("click", (event) => {
    if (event.ctrlKey || event.metaKey || event.shiftKey) return;
    const number = event.target.closest?.(".number");
    const name = event.target.closest?.(".clause .name");
    const to = number ? nameOf(belonging(number)[0]) : name ? wordsOf(belonging(name)[0]) : null;
    if (to) {
      event.preventDefault();
      goTo(to);
    }
  });

  document.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
    const at = document.activeElement;
    const [clause] = belonging(at);
    if (clause === undefined) return;
    const names = [...document.querySelectorAll(".clause .name")].filter((name) => name.offsetParent);
    const here = names.indexOf(nameOf(clause));
    const next = {
      ArrowDown: () => names[here + 1],
      ArrowUp: () => names[here - 1],
      ArrowLeft: () => wordsOf(clause),
      ArrowRight: () => nameOf(clause),
      Escape: () => (at.blur(), null),
    }[event.key]?.();
    if (next) {
      event.preventDefault();
      goTo(next);
    }
  });
})();
