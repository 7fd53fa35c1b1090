// Finds one's way in the description and says in words what a value may be.

const components = "#/components/schemas/";

/** resolver is the document itself, once it is known to be one of ours. */
export function resolver(doc) {
  if (!doc.openapi?.startsWith("3.1")) throw new Error("it is not OpenAPI 3.1");
  return doc;
}

/** nameOf is the component that a schema refers to, or null. */
export function nameOf(schema) {
  return schema.$ref?.startsWith(components) ? schema.$ref.slice(components.length) : null;
}

/** resolve follows a reference; what stands beside it stays. */
export function resolve(doc, schema) {
  const name = nameOf(schema);
  if (name === null) return schema;
  const { $ref, ...beside } = schema;
  return { ...doc.components.schemas[name], ...beside };
}

/** bodyOf is the schema of an operation's body, or undefined. */
export function bodyOf(operation) {
  return operation.requestBody?.content["application/json"]?.schema;
}

/** answerOf is the schema of the JSON answer, or undefined. */
export function answerOf(operation) {
  const schema = operation.responses["200"]?.content?.["application/json"]?.schema;
  return schema?.anyOf?.[0] ?? schema;
}

/** exampleOf is the input that the description shows for an operation. */
export function exampleOf(operation) {
  return operation.requestBody?.content["application/json"]?.example ?? {};
}

/** kindsOf lists the kinds of a union with their schemas, or null. */
export function kindsOf(doc, schema) {
  const told = resolve(doc, schema).discriminator;
  if (!told) return null;
  return { key: told.propertyName, kinds: new Map(Object.entries(told.mapping).map(([kind, ref]) => [kind, resolve(doc, { $ref: ref })])) };
}

const plainWords = new Map([
  ["Number", "number"], ["Quantity", "number, or text with its unit"], ["Count", "whole number"],
  ["Money", "money, as text"], ["Amount", "money, as text"],
]);

/** words says what a value may be: {text} or {text, part} to link to. */
export function words(schema) {
  const name = nameOf(schema);
  if (name !== null) return plainWords.has(name) ? { text: plainWords.get(name) } : { text: "", part: name };
  if (schema.const !== undefined) return { text: `always ${schema.const}` };
  if (schema.enum) return { text: "one of " + schema.enum.join(", ") };
  if (schema.anyOf?.map((one) => one.type).join() === "number,string") return { text: plainWords.get("Quantity") };
  if (schema.anyOf) return merged(schema.anyOf.map(words));
  const types = [schema.type ?? "anything"].flat();
  if (types.includes("array")) {
    const of = words(schema.items);
    return { text: `list of ${of.text}`, part: of.part };
  }
  if (types[0] === "object" && typeof schema.additionalProperties === "object") {
    return { text: `names, each with ${words(schema.additionalProperties).text}` };
  }
  const said = { integer: "whole number", string: types.length > 1 ? "text with its unit" : "text", boolean: "true or false", null: "nothing" };
  return { text: types.map((one) => said[one] ?? one).join(", or ") };
}

function merged(list) {
  return { text: list.map((one) => one.text || one.part).join(", or ") };
}
