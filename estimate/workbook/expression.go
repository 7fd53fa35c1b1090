package workbook

import (
	"fmt"
	"strconv"
	"strings"

	"filmbuild/estimate/formula"
)

// inCells writes an expression as a spreadsheet formula. refer gives the
// reference of a term. Everything is bracketed, as a spreadsheet reads −2^2
// otherwise than mathematics does.
func inCells(e *formula.Expression, refer func(string) string) string {
	arguments := make([]string, len(e.Arguments))
	for i, a := range e.Arguments {
		arguments[i] = inCells(a, refer)
	}
	switch e.Operator {
	case formula.Number:
		return number(e.Value)
	case formula.Term:
		return refer(e.Name)
	case formula.Neg:
		return "(-" + arguments[0] + ")"
	case formula.Ceil:
		return fmt.Sprintf("(-INT(-(%s-ABS(%s)*1E-12)))", arguments[0], arguments[0])
	case formula.Floor:
		return fmt.Sprintf("INT(%s+ABS(%s)*1E-12)", arguments[0], arguments[0])
	}
	if sign, infix := signs()[e.Operator]; infix {
		return "(" + arguments[0] + sign + arguments[1] + ")"
	}
	return strings.ToUpper(string(e.Operator)) + "(" + strings.Join(arguments, ",") + ")"
}

func signs() map[formula.Operator]string {
	return map[formula.Operator]string{formula.Add: "+", formula.Sub: "-", formula.Mul: "*", formula.Div: "/", formula.Pow: "^",
		formula.Less: "<", formula.AtMost: "<=", formula.Greater: ">", formula.AtLeast: ">=", formula.Equal: "="}
}

// number writes a number so that it is read back as it was.
func number(x float64) string {
	text := strconv.FormatFloat(x, 'G', -1, 64)
	if x < 0 {
		return "(" + text + ")"
	}
	return text
}
