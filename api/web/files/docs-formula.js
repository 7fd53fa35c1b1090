// Addresses of calculators, and the formulas that ask them from a spreadsheet.

/** address joins a path and the values that are given, in their order. */
export function address(origin, path, values) {
  const given = values.filter(([, value]) => value !== "").map(([name, value]) => `${encodeURIComponent(name)}=${encodeURIComponent(value)}`);
  return origin + path + (given.length > 0 ? "?" + given.join("&") : "");
}

// A text in a formula may have 255 characters; longer ones are joined.
const longestText = 250;

/** formula asks an address from a cell. */
export function formula(url) {
  const pieces = [];
  for (let at = 0; at < url.length; at += longestText) {
    pieces.push(`"${url.slice(at, at + longestText).replaceAll('"', '""')}"`);
  }
  return `=WEBSERVICE(${pieces.join("&")})`;
}
