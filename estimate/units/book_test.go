package units

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestLoaderRefusesFaultyTables(t *testing.T) {
	const unitsHead = "unit,dimension,factor,offset,source\n"
	const spellingsHead = "unit,case,spellings\n"
	const wireHead = "suffix,unit,si,us,want\n"
	const metre = unitsHead + "m,length,1,0,SI\ns,time,1,0,SI\n"
	const spelled = spellingsHead + "m,any,m\ns,any,s\n"
	for _, c := range []struct{ units, spellings, wire, message string }{
		{"unit,dimension,factor\n", spelled, wireHead, "units.csv: the columns must be [unit dimension factor offset source]"},
		{"", spelled, wireHead, "units.csv: the columns must be [unit dimension factor offset source]"},
		{metre + "m,length,1,0,SI\n", spelled, wireHead, "units.csv, row 4: m is there twice"},
		{unitsHead + "m,length,1,0,\n", spelled, wireHead, "units.csv, row 2: m has no source"},
		{unitsHead + "m,length,0,0,SI\n", spelled, wireHead, "units.csv, row 2: the factor of m is 0"},
		{unitsHead + "m,length,1/0,0,SI\n", spelled, wireHead, `units.csv, row 2: "1/0" is not a decimal or a quotient of decimals`},
		{unitsHead + "m,length,1,x,SI\n", spelled, wireHead, `units.csv, row 2: "x" is not a decimal or a quotient of decimals`},
		{metre, spellingsHead + "q,any,q\n", wireHead, "spellings.csv, row 2: no unit q"},
		{metre, spellingsHead + "m,all,m\n", wireHead, `spellings.csv, row 2: case "all" is neither any nor exact`},
		{metre, spelled + "s,any,m\n", wireHead, "spellings.csv, row 4: m is spelled twice"},
		{metre, spelled, wireHead + "m,q,m,m,\n", "wire.csv, row 2: no unit q"},
		{metre, spelled, wireHead + "m,m,m,s,\n", "wire.csv, row 2: m cannot be printed in s"},
		{metre, spelled, wireHead + "m,m,m,m,\nm,m,m,m,\n", `wire.csv, row 3: suffix "m" is there twice`},
		{metre, spelled, wireHead + "m\n", "wire.csv: record on line 2: wrong number of fields"},
	} {
		_, err := load(c.units, c.spellings, c.wire)
		assert.EqualError(t, err, c.message)
	}
}
