// The job as text, for those who want it. It is what is sent.

/** mountRaw keeps a text box and the job the same. */
export function mountRaw(box, details, job) {
  const show = () => { if (box.value !== job.text) box.value = job.text; };
  let over = false; // a text is put in place of all that was there
  job.addEventListener("change", (event) => { if (event.detail !== "text") show(); });
  box.addEventListener("beforeinput", ({ inputType, data }) => {
    const all = box.value !== "" && box.selectionStart === 0 && box.selectionEnd === box.value.length;
    over = all && inputType.startsWith("insert") && (inputType !== "insertText" || data?.length > 1);
  });
  box.addEventListener("input", () => {
    if (over) job.pasteOver(box.value);
    else job.retype(box.value);
    over = false;
  });
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
