// Keeps the formula up to date while someone types; without it the form's
// button does the same.
const form = document.getElementById("ask");
let timer = 0;
let latest = 0;

/** ours puts the address that the browser knows in place of the server's own. */
function ours() {
  for (const one of document.querySelectorAll("#excel, #calc")) {
    one.textContent = one.textContent.replace(/https?:\/\/[^/"]+/, location.origin);
  }
}

async function renew(whole) {
  const turn = ++latest;
  const query = new URLSearchParams([...new FormData(form)].filter(([name, value]) => value !== "" && (!whole || name === "calculation" || name === "kind")));
  const answer = await fetch(`/docs/formula?${query}`);
  if (!answer.ok || turn !== latest) return;
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  for (const id of whole ? ["formula", "ask"] : ["formula", "answers"]) {
    document.getElementById(id).replaceChildren(...page.getElementById(id).childNodes);
  }
  ours();
}

form.addEventListener("input", (event) => {
  clearTimeout(timer);
  if (event.target.tagName === "SELECT") return;
  timer = setTimeout(() => renew(false).catch(() => {}), 200); // without an answer the last formula stays
});
form.addEventListener("change", (event) => {
  if (event.target.tagName !== "SELECT") return;
  const id = event.target.id;
  renew(true).then(() => document.getElementById(id).focus()).catch(() => form.submit());
});
ours();
