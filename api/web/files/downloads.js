// Files to take away: the estimate in its forms, its tables, the sheets of the
// markings, and the job itself.
import { form, sheet } from "./api.js";
import { fill, h } from "./dom.js";
import { list } from "./lenient.js";

const workbook = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
const tables = ["steps", "order", "areas", "budget", "buyers", "lines", "hours", "funding", "narrative", "range", "drivers", "curve"];

/** save hands a text or a blob over as a file. */
export function save(content, kind, name) {
  const place = URL.createObjectURL(new Blob([content], { type: kind }));
  const link = h("a", { href: place, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(place), 10_000);
}

/** fileName makes a name of what the job is called: "Lock gate, two leaves" -> "lock-gate-two-leaves". */
export function fileName(job) {
  const name = String(job.document.name ?? "").toLowerCase().normalize("NFKD").replace(/[^a-z0-9]+/g, "-").replace(/^-+|-+$/g, "");
  return name.slice(0, 60) || "job";
}

/** today is the date by the clock of this browser: 2026-11-25. */
export function today(now = new Date()) {
  const two = (number) => String(number).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** request is what is asked of the server for a thing to take away: {query, accept, ending}. */
function request(wanted, paper, system) {
  const paged = (pages) => ({ query: `?pages=${pages}&paper=${paper}&units=${system}&date=${today()}`, accept: "application/pdf", ending: `.${pages}.pdf` });
  switch (wanted) {
    case "workbook": return { query: "", accept: workbook, ending: ".xlsx" };
    case "chart": return { query: "", accept: "image/svg+xml", ending: ".range.svg" };
    case "report":
    case "job-sheets": return paged(wanted);
  }
  return { query: "?table=" + wanted, accept: "text/csv", ending: `.${wanted}.csv` };
}

/** mountDownloads connects the buttons. latest() gives {text, asked} of the estimate shown. */
export function mountDownloads(root, { job, units, latest, report }) {
  fill(root.querySelector("[data-tables]"), tables.map((name) => h("button", { type: "button", class: "small", "data-save": name }, name)));
  mountSheets(root.querySelector("[data-sheets]"), job);
  root.addEventListener("click", async ({ target }) => {
    const button = target.closest("[data-save], [data-sheet]");
    if (!button || button.getAttribute("aria-busy")) return;
    const { save: wanted, sheet: marking } = button.dataset;
    if (wanted === "job") return save(job.text, "application/json", fileName(job) + ".job.json");
    const shown = latest();
    if (!shown) return report("There is no estimate to save yet.");
    if (wanted === "estimate") return save(shown.text, "application/json", fileName(job) + ".estimate.json");
    button.setAttribute("aria-busy", "true");
    try {
      if (marking) return await saveSheet(shown, marking, job, units);
      const { query, accept, ending } = request(wanted, root.querySelector("[data-paper]").value, units.system);
      save(await form(shown.asked, query, accept), accept, fileName(job) + ending);
      report("");
    } catch (error) {
      report(`The file could not be fetched: ${error.message}. Nothing is lost; try again.`);
    } finally {
      button.removeAttribute("aria-busy");
    }
  });
}

async function saveSheet(shown, marking, job, units) {
  const query = new URLSearchParams({ marking, units: units.system, date: today() });
  save(await sheet(shown.asked, "?" + query), "image/svg+xml", `${fileName(job)}.${marking.replace(/[^\w-]+/g, "-")}.svg`);
}

/** mountSheets offers the sheet of each marking that the job has. */
function mountSheets(root, job) {
  const offer = () => {
    const ids = list(job.document.markings).map((marking) => marking.id).filter(Boolean);
    root.hidden = ids.length === 0;
    fill(root.querySelector("div"), ids.map((id) => h("button", { type: "button", class: "small", "data-sheet": id }, id)));
  };
  job.addEventListener("change", offer);
  offer();
}
