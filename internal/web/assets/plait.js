// The little script: every page works without it. It keeps the version of a
// form in step with what has saved itself, says whether all is saved, follows a
// search, and lets rows be dragged.
"use strict";
(() => {
  document.documentElement.classList.add("script");
  const byId = (id) => document.getElementById(id);
  const say = (text) => { const said = byId("said"); if (said) said.textContent = text; };

  // Saved or not.
  const unsaved = "Not saved yet. It saves when you leave the field.";
  let pending = false;
  const state = (text, bad) => {
    const line = byId("state");
    if (!line) return;
    line.textContent = text;
    line.classList.toggle("pending", Boolean(bad));
  };
  document.addEventListener("input", (event) => {
    const form = event.target.form;
    if (form && form.hasAttribute("data-keeps")) {
      pending = true;
      state(unsaved);
    } else if (form && form.hasAttribute("data-pastes")) {
      pending = true;
    }
  });
  document.addEventListener("submit", () => { pending = false; });
  window.addEventListener("beforeunload", (event) => { if (pending) event.preventDefault(); });

  document.addEventListener("htmx:configRequest", (event) => {
    const keep = byId("keep");
    if (keep && event.detail.parameters.has && event.detail.parameters.has("version")) {
      event.detail.parameters.set("version", keep.dataset.version);
    }
  });
  document.addEventListener("htmx:beforeRequest", (event) => {
    const form = event.target.closest("form");
    if (form && form.hasAttribute("data-keeps")) {
      pending = false; // everything typed so far is on its way
      state("Saving…");
    }
    if (form && form.hasAttribute("data-dovetails")) say("Dovetailing");
    // What is typed into a page that is about to be replaced would be lost.
    if (event.detail.target.id === "main") event.detail.target.inert = true;
  });
  document.addEventListener("htmx:afterRequest", (event) => { event.detail.target.inert = false; });
  // An answer that is no page of the form (somebody else changed it, it broke)
  // takes the place of the page.
  document.addEventListener("htmx:beforeSwap", (event) => {
    const status = event.detail.xhr.status;
    if (status >= 400 && status !== 422) {
      event.detail.shouldSwap = true;
      event.detail.target = byId("main");
      event.detail.swapOverride = "outerHTML";
      event.detail.selectOverride = "#main";
    }
  });
  const lost = () => {
    pending = true;
    state("Not saved: the server does not answer. What you typed is still here. Press Save to try again.", true);
    say("Not saved: the server does not answer.");
  };
  document.addEventListener("htmx:sendError", lost);
  document.addEventListener("htmx:timeout", lost);

  document.addEventListener("htmx:afterSettle", () => {
    if (pending && document.querySelector("[data-keeps]")) state(unsaved);
    for (const fault of document.querySelectorAll(".fault[id]")) {
      const field = byId(fault.id.replace(/-fault$/, ""));
      if (!field || !field.matches("input, select, textarea")) continue;
      if (fault.textContent.trim()) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
    }
    if (document.activeElement === document.body && byId("main")) byId("main").focus({ preventScroll: true });
    start();
  });

  // Minutes by the arrow keys; the low and the high minutes go with the likely ones.
  const minutes = (field) => field.matches?.("[data-keeps] input[inputmode=numeric]");
  document.addEventListener("keydown", (event) => {
    const by = event.key === "ArrowUp" ? 1 : event.key === "ArrowDown" ? -1 : 0;
    if (!by || event.ctrlKey || event.metaKey) return;
    if (event.altKey) { // a step up or down
      const row = event.target.closest?.("tr[data-step]");
      const button = row && byId((by > 0 ? "up-" : "down-") + row.dataset.step);
      if (!button || event.target.matches("select")) return;
      event.preventDefault();
      if (!button.disabled) button.click();
      return;
    }
    if (!minutes(event.target) || !/^\d*$/.test(event.target.value)) return;
    event.preventDefault();
    event.target.value = Math.max(0, Number(event.target.value) + by);
    event.target.dataset.stepped = "yes";
    event.target.dispatchEvent(new Event("input", { bubbles: true }));
  });
  document.addEventListener("focusout", (event) => {
    if (!event.target.dataset?.stepped) return;
    delete event.target.dataset.stepped;
    event.target.dispatchEvent(new Event("change", { bubbles: true }));
  });
  document.addEventListener("change", (event) => {
    if (!event.target.name?.endsWith(".hands.likely") || !/^\d+$/.test(event.target.value)) return;
    const [low, high] = ["low", "high"].map((end) => document.getElementsByName(event.target.name.replace(/likely$/, end))[0]);
    const likely = Number(event.target.value);
    if (low && Number(low.value) > likely) low.value = Math.round(0.75 * likely);
    if (high && Number(high.value) < likely) high.value = Math.min(600, Math.round(4 / 3 * likely));
  }, true);

  // Another place for the open step's wait asks for other fields.
  document.addEventListener("change", (event) => {
    if (!event.target.name?.endsWith(".wait.place") || !event.target.closest("tr.open")) return;
    const again = document.querySelector("button[data-again]");
    if (!again) return;
    event.stopPropagation();
    again.click();
  }, true);

  // A file dropped on its form is sent; several where the form takes several.
  const droppable = (event) => event.target.closest?.("[data-drop]");
  for (const name of ["dragenter", "dragover", "dragleave", "drop"]) {
    document.addEventListener(name, (event) => {
      const form = droppable(event);
      if (!form || !event.dataTransfer?.types.includes("Files")) return;
      event.preventDefault();
      form.classList.toggle("over", name === "dragenter" || name === "dragover");
      const picker = form.querySelector("input[type=file]");
      if (name === "drop" && (event.dataTransfer.files.length === 1 || (picker.multiple && event.dataTransfer.files.length > 1))) {
        picker.files = event.dataTransfer.files;
        form.requestSubmit();
      }
    });
  }

  // A search that runs: its words, and the page when it is over.
  let source = null;
  const follow = (box) => {
    if (source) return;
    source = new EventSource(box.dataset.progress);
    source.addEventListener("step", (event) => {
      const line = byId("sofar");
      if (line) line.textContent = event.data;
      const part = /^(\d+) of (\d+)/.exec(event.data);
      const bar = box.querySelector("progress");
      if (part && bar) { bar.max = part[2]; bar.value = part[1]; }
    });
    source.addEventListener("end", () => {
      source.close();
      source = null;
      location.assign(box.dataset.page);
    });
  };

  // Rows that can be dragged.
  const drag = (table) => {
    if (table.dataset.dragged || !window.Sortable) return;
    table.dataset.dragged = "yes";
    const body = table.tBodies[0];
    window.Sortable.create(body, {
      handle: ".grip", draggable: "tr", forceFallback: true, animation: 120,
      onEnd: (event) => {
        if (event.oldIndex === event.newIndex) return;
        const row = event.item;
        const form = row.querySelector("form.mover");
        const down = event.newIndex > event.oldIndex;
        let beside = down ? row.previousElementSibling : row.nextElementSibling;
        while (beside && !beside.classList.contains("moves")) beside = down ? beside.previousElementSibling : beside.nextElementSibling;
        if (!form || !beside) return;
        const verb = document.createElement("input");
        verb.type = "hidden";
        verb.name = "do";
        verb.value = (down ? "after:" : "before:") + beside.dataset.row;
        form.append(verb);
        form.requestSubmit();
      },
    });
  };

  // The plait on the clock of the rows beside it: they tell their heights, and
  // it is drawn again to them.
  const beside = window.matchMedia("(min-width: 75rem)");
  let drawn = "";
  const align = async () => {
    const frame = document.querySelector("[data-plait]");
    const table = document.querySelector("[data-rows]");
    if (!frame || !table || !beside.matches) return;
    const rows = [...table.tBodies[0].rows];
    const heights = rows.map((row) => Math.round(row.getBoundingClientRect().height * 10) / 10);
    const ask = frame.dataset.plait + "?heights=" + heights.join(",");
    if (ask === drawn && frame.dataset.aligned) return;
    drawn = ask;
    const answer = await fetch(ask);
    if (!answer.ok || ask !== drawn) return;
    const svg = new DOMParser().parseFromString(await answer.text(), "image/svg+xml").documentElement;
    if (svg.nodeName !== "svg" || !frame.isConnected) return;
    frame.replaceChildren(document.importNode(svg, true));
    frame.dataset.aligned = "yes";
    const shift = rows[0].getBoundingClientRect().top - frame.firstElementChild.getBoundingClientRect().top - Number(answer.headers.get("Plait-Top"));
    const now = parseFloat(getComputedStyle(frame).marginTop) || 0;
    frame.style.marginTop = Math.max(0, now + shift) + "px";
  };
  let waiting = 0;
  const alignSoon = () => { cancelAnimationFrame(waiting); waiting = requestAnimationFrame(() => { align().catch(() => {}); }); };
  window.addEventListener("resize", alignSoon);
  document.fonts.ready.then(alignSoon);

  // A row and its mark on the plait light up together.
  const light = (event) => {
    const of = event.target.closest?.("[data-row]");
    for (const lit of document.querySelectorAll(".lit")) lit.classList.remove("lit");
    if (!of) return;
    for (const same of document.querySelectorAll('[data-row="' + CSS.escape(of.dataset.row) + '"]')) same.classList.add("lit");
  };
  document.addEventListener("mouseover", light);
  document.addEventListener("focusin", light);

  // A recipe's text begins at its open step, else at its first.
  const unroll = (text) => {
    if (text.dataset.unrolled) return;
    text.dataset.unrolled = "yes";
    const mark = text.querySelector("mark.here") || text.querySelector("mark");
    if (mark) text.scrollTop = Math.max(0, mark.offsetTop - 60);
  };

  const start = () => {
    for (const text of document.querySelectorAll(".recipe-text")) unroll(text);
    alignSoon();
    const box = document.querySelector("[data-progress]");
    if (box) follow(box);
    for (const table of document.querySelectorAll("[data-rows]")) drag(table);
  };
  start();
})();
