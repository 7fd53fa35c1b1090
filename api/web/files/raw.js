// The job as text, for those who want it. It is what is sent.

/** mountRaw keeps a text box and the job the same. */
export function mountRaw(box, details, job) {
  const show = () => { if (box.value !== job.text) box.value = job.text; };
  job.addEventListener("change", (event) => { if (event.detail !== "text") show(); });
  box.addEventListener("input", () => job.retype(box.value));
  show();
  return {
    /** open shows the box, on request with all of its text chosen, ready to be pasted over. */
    open({ chosen = false } = {}) {
      details.open = true;
      box.focus();
      if (chosen) box.select();
      box.scrollIntoView({ block: "center" });
    },
  };
}
