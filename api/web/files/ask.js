// Asks before something of the user's own is replaced.
import { fill, h } from "./dom.js";

/** ask shows a question with its answers [{text, value}]; the first is the careful one, and Escape means it. */
export function ask(question, answers) {
  return new Promise((resolve) => {
    const dialog = h("dialog", { "aria-labelledby": "question" });
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(answers.find((answer) => answer.value === dialog.returnValue)?.value ?? answers[0].value);
    });
    fill(dialog, h("p", { id: "question" }, question),
      h("div", { class: "acts" }, answers.map((answer, i) => h("button", { type: "button", "data-answer": answer.value, autofocus: i === 0, onclick: () => dialog.close(answer.value) }, answer.text))));
    document.body.append(dialog);
    dialog.showModal();
  });
}
