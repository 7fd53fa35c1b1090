// What the job is called, and its money: rates, additions, other items.
import { more } from "./card.js";
import { h } from "./dom.js";
import { numberField, textField } from "./field.js";
import { list } from "./lenient.js";
import { freeId } from "./new-part.js";
import { below } from "./pointer.js";
import { rows } from "./rows.js";
import { choices } from "./choices.js";
import { labourFields, supplyForm } from "./supply-form.js";
import { plural } from "./words.js";

/** nameForm shows what the job is called. */
export function nameForm(c) {
  return h("div", { class: "fields" }, textField(c, "/name", { label: "What the job is called" }));
}

/** moneyForm shows rates, additions and items. */
export function moneyForm(c) {
  const currency = c.job.document.currency ?? "";
  const rate = (at, label, hint) => moneyField(c, at, `${label}, ${currency} an hour`, hint);
  return h("section", { "aria-labelledby": "money-head" },
    h("h3", { id: "money-head" }, "Money"),
    h("div", { class: "fields" },
      rate("/labour/volunteer_rate", "Volunteers", "value of a given hour, counted in kind"),
      numberField(c, "/contingency_percent", { name: "contingency_percent", empty: "0", hint: "added to the cash, for unknowns" }),
      numberField(c, "/allowance_percent", { name: "allowance_percent", label: "Spare", empty: "0", hint: "added to all that is bought" })),
    more(c, "money", "Paid hours, tax, hire and other items", [
      rate("/labour/paid_rate", "Paid people"), rate("/labour/contract_rate", "Contractor"),
      numberField(c, "/tax_percent", { name: "tax_percent", empty: "0", hint: "on materials and cash items" }),
      textField(c, "/currency", { label: "Currency", hint: "three letters, such as USD" }), itemRows(c)]),
    more(c, "crew", "How the crew works", labourFields.map(([name, label, empty]) => numberField(c, below("/labour", name), { name, label, empty }))),
    supplyForm(c), also(c.job.document));
}

/** Money stays the text that was typed, so that 24.00 remains 24.00. */
function moneyField(c, at, label, hint) {
  return textField(c, at, { label, hint });
}

function itemRows(c) {
  const columns = [{ key: "name", label: "What", text: true }, { key: "amount", label: "Amount" },
    { key: "category", label: "Heading", text: true }, { key: "funding", label: "Paid", values: choices("funding") }];
  return rows(c, "/items", columns, {
    title: "Other items", one: "item", hint: "hire, freight, disposal; 1400 / 1800 / 2600 is a range: low, likely, high",
    fresh: (held) => ({ id: freeId(held, "item"), name: "", amount: "0.00", category: "hire", funding: "cash" }),
  });
}

/** also says what else the job holds that this form does not show. */
function also(job) {
  const kinds = [["test_patches", "test patch", "test patches"]];
  const held = kinds.filter(([name]) => list(job[name]).length > 0).map(([name, one, many]) => plural(job[name].length, one, many));
  if (held.length === 0) return null;
  return h("p", { class: "hint" }, `The job also has ${held.join(", ")}; counted too, and changed in the job text below.`);
}
