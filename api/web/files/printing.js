// Before printing, every working is opened; afterwards all is as it was.

export function mountPrint(root, button) {
  let opened = [];
  addEventListener("beforeprint", () => {
    opened = [...root.querySelectorAll("details:not([open])")];
    for (const details of opened) details.open = true;
  });
  addEventListener("afterprint", () => {
    for (const details of opened) details.open = false;
    opened = [];
  });
  button.addEventListener("click", () => print());
}
