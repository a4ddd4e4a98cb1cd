// A form marked data-swap changes the page in place: what the server answers takes the place of the main part, and the finger stays where it was.
const main = () => document.querySelector("main");

/** The chosen step of a drawing is brought into its window, the page itself stays. */
function reveal() {
  const window = document.querySelector(".drawing"), step = window?.querySelector("[aria-current]");
  if (!step) return;
  const here = step.getBoundingClientRect(), frame = window.getBoundingClientRect();
  window.scrollBy(here.left - frame.left - (frame.width - here.width) / 2, here.top - frame.top - (frame.height - here.height) / 2);
}
reveal();

async function swap(form, button) {
  const body = new URLSearchParams(new FormData(form, button));
  const answer = await fetch(form.getAttribute("action") || location.pathname, { method: "POST", body, headers: { Accept: "text/html", "Trivet-Swap": "1" } });
  const next = new DOMParser().parseFromString(await answer.text(), "text/html");
  if (!next.querySelector("main") || (answer.redirected && new URL(answer.url).pathname.startsWith("/session"))) return location.reload();
  const top = document.documentElement.scrollTop, index = [...document.querySelectorAll("form")].indexOf(form);
  const at = answer.headers.get("Trivet-At") ?? (answer.redirected ? answer.url : null);
  if (at) history.replaceState(null, "", at);
  document.title = next.title;
  main().replaceWith(next.querySelector("main"));
  document.documentElement.scrollTop = top;
  reveal();
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
