// Files to take away: the estimate, its tables, and the job itself.
import { h } from "./dom.js";
import { table } from "./api.js";

/** save hands a text over as a file. */
export function save(text, kind, name) {
  const place = URL.createObjectURL(new Blob([text], { type: kind }));
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

/** mountDownloads connects the buttons. latest() gives {text, job text} of the estimate shown. */
export function mountDownloads(root, job, latest, report) {
  root.addEventListener("click", async (event) => {
    const wanted = event.target.closest("[data-save]")?.dataset.save;
    if (!wanted) return;
    if (wanted === "job") return save(job.text, "application/json", fileName(job) + ".job.json");
    const shown = latest();
    if (!shown) return report("There is no estimate to save yet.");
    if (wanted === "estimate") return save(shown.text, "application/json", fileName(job) + ".estimate.json");
    try {
      save(await table(shown.asked, wanted), "text/csv", `${fileName(job)}.${wanted}.csv`);
    } catch (error) {
      report(`The table could not be fetched: ${error.message}. Nothing is lost; try again.`);
    }
  });
}
