package build

import (
	"filmbuild/estimate"
	"filmbuild/estimate/blast"
	"filmbuild/estimate/film"
	"filmbuild/estimate/target"
	"filmbuild/products"
	"filmbuild/surfaces/placing"
)

// moneyPattern is what the reader of money accepts as text and what amounts are
// printed as: up to 15 digits before the point and 8 after it.
const moneyPattern = `^-?[0-9]{1,15}(\.[0-9]{1,8})?$`

// numberSchemas are the forms that a number of an input may take, each told
// once. Limits stand beside the references to them; in JSON Schema they bear
// on plain numbers alone, and the service holds the other forms to them too.
func numberSchemas() *object {
	text := obj("type", "string", "minLength", 1)
	return obj(
		"Number", obj("title", "a number",
			"description", "A plain number, or a range.",
			"anyOf", []any{obj("type", "number"), ref("Range")}),
		"Quantity", obj("title", "a number with a unit",
			"description", "A plain number in the unit that the field's name ends in; or text with a unit of its own, such as \"0.8 mil\", \"12 ft 10 1/2 in\" or \"35 psi\", which is turned into it; or a range of either.",
			"anyOf", []any{obj("type", "number"), text, ref("Range")}),
		"Count", obj("title", "a whole number",
			"description", "A whole number, or a range whose likely value is one.",
			"anyOf", []any{obj("type", "integer"), ref("Range")}),
		"Range", obj("title", "a range",
			"type", "object",
			"description", "A number that is not known exactly. Low may not be above likely, nor likely above high. A single calculation uses the likely value.",
			"properties", obj(
				"low", obj("anyOf", oneTypeOf("number", "string"), "description", "hardly ever less"),
				"likely", obj("anyOf", oneTypeOf("number", "string"), "description", "what is expected"),
				"high", obj("anyOf", oneTypeOf("number", "string"), "description", "hardly ever more"),
				"distribution", obj("type", "string", "enum", []string{"pert", "triangular"}, "default", "pert", "description", "how values spread between low and high")),
			"required", []string{"low", "likely", "high"},
			"additionalProperties", false),
		"Money", obj("title", "money, asked",
			"description", "Money in the document's currency: decimal text such as \"140.00\", best; a plain number; or a range.",
			"anyOf", []any{obj("type", "string", "pattern", moneyPattern), obj("type", "number"), ref("Range")}),
		"Amount", obj("title", "money, answered",
			"type", "string",
			"description", "Money in the document's currency, as decimal text with the decimal places of that currency.",
			"pattern", moneyPattern,
			"examples", []string{"140.00"}),
		"OneValue", obj("title", "one value",
			"type", "object",
			"description", "The one value that field asked for, under that name.",
			"minProperties", 1, "maxProperties", 1,
			"additionalProperties", obj("anyOf", oneTypeOf("number", "string", "boolean"))))
}

// oneTypeOf allows several types. A list under type would say the same, but
// generators of clients cannot read it.
func oneTypeOf(types ...string) []any {
	var all []any
	for _, one := range types {
		all = append(all, obj("type", one))
	}
	return all
}

// fixedWords lists the words that some text fields are limited to, by type and
// wire name, from the lists that the checks go by.
func fixedWords() (map[string][]string, error) {
	catalogue, err := products.Load()
	if err != nil {
		return nil, err
	}
	var methods, rules []string
	for _, m := range catalogue.Methods() {
		methods = append(methods, m.ID)
	}
	for _, r := range film.Rules() {
		rules = append(rules, string(r))
	}
	feeds := []string{string(blast.Pressure), string(blast.Suction)}
	return map[string][]string{
		"Component.substrate":    estimate.Substrates(),
		"FilmPlan.method":        methods,
		"FilmPlan.film_rule":     rules,
		"Coating.film_rule":      rules,
		"Blast.feed":             feeds,
		"Blasting.feed":          feeds,
		"Paint.role":             products.Roles(),
		"Liquid.use":             products.LiquidUses(),
		"Tape.use":               products.TapeUses(),
		"Film.use":               products.FilmUses(),
		"Place.side":             placing.Sides(),
		"Place.anchor":           placing.Anchors(),
		"Station.face":           placing.Faces(),
		"Question.find":          target.Finds(),
		"Question.money":         target.Moneys(),
		"Pack.tax":               products.Taxes(),
		"Pack.part":              products.PartNames(),
		"Funding.form":           estimate.FundingForms(),
		"Funding.indirect":       estimate.IndirectMethods(),
		"Funding.indirect_base":  {"mtdc", "direct"},
		"Item.of":                estimate.ItemTotals(),
		"Item.tax":               products.Taxes(),
		"Item.funding":           {"cash", "in_kind"},
		"Job.tax_rounding":       estimate.TaxRoundings(),
		"Labour.contract_tax":    products.Taxes(),
		"Labour.volunteer_basis": estimate.VolunteerBases(),
		"StepBase.role":          estimate.Roles(),
		"StepBase.labour":        {"volunteer", "paid", "contract"},
		"StepBase.rate_basis":    {"nozzle_on", "burdened"},
	}, nil
}
