package api

import (
	"net/url"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/forms"
	"filmbuild/estimate/units"
)

// portable is the media type of PDF.
const portable = "application/pdf"

// formWanted reads the parameters of the printed forms.
func formWanted(values url.Values, table, system string, faults *fault.List) forms.Wanted {
	wanted := forms.Wanted{Table: table, Pages: oneOf(values, "pages", forms.Pages(), faults), Date: values.Get("date"), Paper: values.Get("paper")}
	wanted.Printed().Check(func(field, detail string) { faults.Add(pointerTo(field), "out_of_range", detail) })
	if shown, err := units.ParseSystem(system); err == nil {
		wanted.System = shown
	}
	return wanted
}
