// Builds elements. Text goes in as text nodes only, so that nothing a job says
// can become markup.

/**
 * h("p", {class: "note", onclick: f}, "text", child) makes an element.
 * Properties that start with "on" are listeners; false, null and undefined are
 * left out; true is an attribute without a value.
 */
export function h(tag, properties = {}, ...children) {
  return dress(document.createElement(tag), properties, children);
}

const drawing = "http://www.w3.org/2000/svg";

/** svg is h for elements of a drawing. */
export function svg(tag, properties = {}, ...children) {
  return dress(document.createElementNS(drawing, tag), properties, children);
}

function dress(element, properties, children) {
  for (const [name, value] of Object.entries(properties)) {
    if (value === false || value === null || value === undefined) continue;
    if (name.startsWith("on")) element.addEventListener(name.slice(2), value);
    else if (name === "value") element.value = value;
    else element.setAttribute(name, value === true ? "" : value);
  }
  element.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false));
  return element;
}

/** fill replaces what an element holds. */
export function fill(element, ...children) {
  element.replaceChildren(...children.flat(Infinity).filter((child) => child !== null && child !== undefined && child !== false));
}

let made = 0;

/** freshId gives an id that no other element has. */
export function freshId(stem) {
  made += 1;
  return `${stem}-${made}`;
}
