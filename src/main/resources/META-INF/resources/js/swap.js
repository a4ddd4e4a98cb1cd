// A form marked data-swap changes the page in place: what the server answers takes the place of the main part, and the finger stays where it was.
const main = () => document.querySelector("main");

async function swap(form, button) {
  const body = new URLSearchParams(new FormData(form, button));
  const answer = await fetch(form.getAttribute("action") || location.pathname, { method: "POST", body, headers: { Accept: "text/html", "Trivet-Swap": "1" } });
  const next = new DOMParser().parseFromString(await answer.text(), "text/html");
  if (!next.querySelector("main") || (answer.redirected && new URL(answer.url).pathname.startsWith("/session"))) return location.reload();
  const top = document.documentElement.scrollTop, drawing = document.querySelector(".drawing")?.scrollTop, index = [...document.querySelectorAll("form")].indexOf(form);
  const at = answer.headers.get("Trivet-At") ?? (answer.redirected ? answer.url : null);
  if (at) history.replaceState(null, "", at);
  document.title = next.title;
  main().replaceWith(next.querySelector("main"));
  document.documentElement.scrollTop = top;
  if (drawing) document.querySelector(".drawing")?.scrollTo({ top: drawing });
  const problem = document.querySelector("main [role=alert]");
  if (problem) problem.scrollIntoView({ block: "center" });
  const forms = document.querySelectorAll("form");
  const focus = problem ?? forms[Math.min(index, forms.length - 1)]?.querySelector("button, input:not([type=hidden]), select, textarea");
  if (focus) {
    if (!focus.matches("button, input, select, textarea, a")) focus.tabIndex = -1;
    focus.focus({ preventScroll: true });
  }
}

document.addEventListener("submit", event => {
  const form = event.target;
  if (form.dataset.swap === undefined) return;
  event.preventDefault();
  form.inert = true;
  swap(form, event.submitter).catch(() => { form.inert = false; form.removeAttribute("data-swap"); form.requestSubmit(event.submitter); });
});
