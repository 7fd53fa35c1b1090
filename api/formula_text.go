package api

import (
	"net/url"
	"regexp"
	"strings"
)

// piece is a part of an address: text as it is, or the name of a cell.
type piece struct{ text, cell string }

var cellName = regexp.MustCompile(`^\$?[A-Za-z]{1,3}\$?[1-9][0-9]{0,6}$`)

func isCell(value string) bool { return cellName.MatchString(value) }

// pieces is the address that a formula asks.
func (v *formulaView) pieces(origin string) []piece {
	address := origin + "/v1/calculations/" + v.Name + "?"
	if v.Kind != "" {
		address += "kind=" + url.QueryEscape(v.Kind) + "&"
	}
	list := []piece{{text: address}}
	add := func(text string) { list[len(list)-1].text += text }
	for _, in := range v.Inputs {
		switch {
		case in.Value == "":
		case isCell(in.Value):
			add(url.QueryEscape(in.Name) + "=")
			list = append(list, piece{cell: strings.ToUpper(in.Value)}, piece{text: "&"})
		default:
			add(url.QueryEscape(in.Name) + "=" + url.QueryEscape(in.Value) + "&")
		}
	}
	add("field=" + url.QueryEscape(v.Field))
	return list
}

// longestText is how much text in quotes stands in a formula at a time; Excel
// takes 255 characters.
//
// Source: Microsoft, Excel specifications and limits (from memory).
const longestText = 250

// spreadsheetFormula asks an address from a cell and reads the answer as a
// number whatever the language of the spreadsheet. Arguments are parted by
// separator; a decimal comma in a cell becomes a point.
func spreadsheetFormula(list []piece, separator string) string {
	var parts []string
	for _, p := range list {
		if p.cell != "" {
			parts = append(parts, `ENCODEURL(SUBSTITUTE(`+p.cell+separator+`","`+separator+`"."))`)
			continue
		}
		for text := p.text; text != ""; {
			cut := min(longestText, len(text))
			parts = append(parts, `"`+strings.ReplaceAll(text[:cut], `"`, `""`)+`"`)
			text = text[cut:]
		}
	}
	return "=NUMBERVALUE(WEBSERVICE(" + strings.Join(parts, "&") + ")" + separator + `"."` + separator + `",")`
}
