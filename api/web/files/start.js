// Where a job comes from: an example, nothing, a file, or pasted text.
import { ask } from "./ask.js";
import { askPanel } from "./guide.js";
import { fill, h } from "./dom.js";
import { sentence } from "./words.js";

const largest = 1 << 20; // what the server reads, in bytes

const empty = { name: "New job", currency: "USD" };

/** simplestFirst puts the examples in the order of their length. */
export function simplestFirst(examples) {
  return [...examples].sort((a, b) => JSON.stringify(a.job).length - JSON.stringify(b.job).length);
}

/** mountStart fills the list of examples and connects file and paste. */
export function mountStart({ list, file, paste }, examples, job, { saveJob, toText, started, bought, units, report }) {
  const blank = { id: "empty-job", doc: "No parts and no steps yet: add your own.", job: empty };
  const panel = examples.find((example) => example.id === "one-panel");
  const guided = h("li", {}, h("button", { type: "button", "data-guide": "panel", onclick: () => guide() }, h("strong", {}, "I need primer for a panel"), h("span", {}, "Four questions, and the list of what to buy.")));
  const guide = async () => {
    const made = await askPanel(panel.job, units.system);
    if (!made || !(await mayReplace(job, saveJob))) return;
    job.pasteOver(JSON.stringify(made, null, 2));
    bought();
  };
  fill(list, guided, [...simplestFirst(examples), blank].map((example) => h("li", {}, h("button", { type: "button", "data-example": example.id, onclick: () => begin(example) },
    h("strong", {}, sentence(example.id)), h("span", {}, example.doc)))));

  const begin = async (example) => {
    if (!(await mayReplace(job, saveJob))) return;
    job.start(structuredClone(example.job));
    started();
  };
  file.addEventListener("change", async () => {
    const [chosen] = file.files;
    file.value = "";
    if (!chosen) return;
    if (chosen.size > largest) return report(`${chosen.name} is larger than 1 MiB, which no job is. Your job is still here.`);
    const text = await chosen.text();
    try {
      JSON.parse(text);
    } catch {
      return report(`${chosen.name} is not a job: it is not JSON text. Your job is still here.`);
    }
    if (!(await mayReplace(job, saveJob))) return;
    job.open(text);
    started();
  });
  paste.addEventListener("click", toText);
}

/** mayReplace asks where the job is the user's own; saving it first is one of the answers. */
async function mayReplace(job, saveJob) {
  if (!job.own) return true;
  const answer = await ask(`Your job is on the page: ${job.title}. Replace it?`, [
    { text: "Keep my job", value: "keep" }, { text: "Save it as a file, then replace", value: "save" }, { text: "Replace it", value: "replace" }]);
  if (answer === "save") saveJob();
  return answer !== "keep";
}
