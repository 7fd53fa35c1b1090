package takeoff

import (
	"encoding/json"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"filmbuild/estimate/fault"
)

// read imports CSV files by name and returns the job, or the faults as
// "place: code".
func read(t *testing.T, files map[string]string) (job map[string]any, faults []string) {
	t.Helper()
	reader, catalogue := engine(t)
	var list []File
	for name, said := range files {
		list = append(list, File{Name: name, Data: []byte(said)})
	}
	data, err := Import(list, reader, catalogue)
	if err == nil {
		require.NoError(t, json.Unmarshal(data, &job))
		return job, nil
	}
	var bad *fault.Error
	require.True(t, errors.As(err, &bad), "%v", err)
	for _, f := range bad.Faults {
		at := f.Pointer
		if f.Cell != nil {
			at = f.Cell.String()
		}
		faults = append(faults, at+": "+f.Code)
	}
	return nil, faults
}

// part is the first component of a job.
func part(job map[string]any) map[string]any {
	return job["components"].([]any)[0].(map[string]any)
}

func TestOrderCaseAndBlankRowsDoNotMatter(t *testing.T) {
	plain, faults := read(t, map[string]string{"components.csv": "id,kind,area [m²],edge [m]\nplate,measured,2.5,7\n"})
	require.Empty(t, faults)
	for _, said := range []string{
		"\xef\xbb\xbf\r\n,,,\r\nEdge [M],AREA [m2],Kind,ID\r\n\r\n7, 2.5 ,measured,plate\r\n,,,\r\n",
		"shape.kind\tshape.area_m2\tid\tedge_m\nmeasured\t2.5\tplate\t7\n",
		"sep=;\nid;kind;area [m²];edge [m]\nplate;measured;2,5;7,0\n",
		"id;kind;area [cm²];edge [ft]\nplate;measured;25000;\"7 m\"\n",
	} {
		job, faults := read(t, map[string]string{"components.csv": said})
		require.Empty(t, faults, said)
		assert.Equal(t, plain["name"], job["name"])
		assert.Equal(t, "plate", part(job)["id"])
	}
	job, faults := read(t, map[string]string{"whatever.csv": "id,kind,span [ft],root_chord [ft],root thickness ratio,tip chord [m],section\nw,wing,12,4 ft 6 1/2 in,9 %,1e0,naca\n"})
	require.Empty(t, faults)
	assert.Equal(t, map[string]any{"kind": "wing", "span_m": "12 ft", "root_chord_m": "4 ft 6 1/2 in", "root_thickness_ratio": "9 %", "tip_chord_m": 1.0, "section": "naca"}, part(job)["shape"])
}

func TestEveryFaultIsToldAtItsCell(t *testing.T) {
	_, faults := read(t, map[string]string{
		"components.csv": "id,kind,area [m²],edge [m],colour,span [kg]\n" +
			"a,measured,\"1,250\",x,red,\n" +
			"b,blob,1,,,\n\n" +
			"c,measured,3 kg,2,,,7\n",
		"steps.csv": "id,operation,on,product,coats\n" +
			"s,paint,a,epoxy-primer,1\n" +
			"p,coat,\"a, nobody\",nothing,1.5\n",
	})
	assert.ElementsMatch(t, []string{
		"components, row 1, column E (colour): unknown_field",
		"components, row 1, column F (span [kg]): wrong_unit",
		"components, row 5, column G: unknown_field",
		"components, row 2, column C (area [m²]): not_a_number",
		"components, row 2, column D (edge [m]): not_a_number",
		"components, row 3, column B (kind): unknown_kind",
		"components, row 5, column C (area [m²]): wrong_unit",
		"steps, row 2, column B (operation): unknown_kind",
		"steps, row 3, column C (on): unknown_reference",
		"steps, row 3, column D (product): unknown_reference",
		"steps, row 3, column E (coats): wrong_type",
	}, faults)
}

func TestDecimalCommasAreNeverMisread(t *testing.T) {
	for said, wanted := range map[string]any{"1,5": 1.5, "0,125": 0.125, "12,50": 12.5, "3": 3.0, "2,5 m²": "2.5 m²"} {
		job, faults := read(t, map[string]string{"components.csv": "id;kind;area [m²]\na;measured;" + said + "\n"})
		require.Empty(t, faults, said)
		assert.Equal(t, wanted, part(job)["shape"].(map[string]any)["area_m2"], said)
	}
	for _, said := range []string{"1,250", "1.250", "1.250,5", "1,2,5", "1.250.000"} {
		_, faults := read(t, map[string]string{"components.csv": "id;kind;area [m²]\na;measured;" + said + "\n"})
		assert.Equal(t, []string{"components, row 2, column C (area [m²]): not_a_number"}, faults, said)
	}
	for _, said := range []string{"1,250", "1,5"} { // with columns parted by commas nothing tells
		_, faults := read(t, map[string]string{"components.csv": "id,kind,area [m²]\na,measured,\"" + said + "\"\n"})
		assert.Equal(t, []string{"components, row 2, column C (area [m²]): not_a_number"}, faults, said)
	}
	_, faults := read(t, map[string]string{"items.csv": "id;amount\na;1,250\nb;12,50\n"})
	assert.Equal(t, []string{"items, row 2, column B (amount): not_a_number"}, faults)
	job, faults := read(t, map[string]string{"items.csv": "id;amount [EUR]\nb;12,50\n"})
	require.Empty(t, faults)
	assert.Equal(t, "12.50", job["items"].([]any)[0].(map[string]any)["amount"])
	assert.Equal(t, "EUR", job["currency"])
}

func TestFilesThatAreNoTakeOff(t *testing.T) {
	for said, wanted := range map[string]string{
		"":                              "components: required",
		"\xff\xfei\x00":                 "components: wrong_type",
		"id,kind\na\xb5,measured\n":     "components, row 2: wrong_type",
		"id;kind,area [m²]\na;b,c\n":    "components, row 1: inconsistent",
		"id,kind\na,\"measured\nx\"y\n": "components, row 3, column B: syntax",
		"PK\x03\x04rubbish":             "components: wrong_type",
		"%PDF-1.7\x00":                  "components: wrong_type",
		"\xd0\xcf\x11\xe0\xa1":          "components: wrong_type",
		"id,kind,id\na,measured,b\n":    "components, row 1, column C (id): duplicate_name",
		"id,area\na,3\n":                "components, row 1, column B (area): wrong_unit",
	} {
		_, faults := read(t, map[string]string{"components.csv": said})
		require.NotEmpty(t, faults, "%q", said)
		assert.Contains(t, faults, wanted, "%q", said)
	}
	_, faults := read(t, map[string]string{"mine.csv": "id,name\na,b\n"})
	assert.Equal(t, []string{"mine: unknown_kind"}, faults)
}

func TestListsBelongToTheirElement(t *testing.T) {
	job, faults := read(t, map[string]string{
		"components.csv": "id,kind\nhull,body\n",
		"stations.csv":   "component,x [m],width [m],height [m]\nhull,0.5,0.4,0.4\nhull,2,0.6,0.5\n",
	})
	require.Empty(t, faults)
	assert.Len(t, part(job)["shape"].(map[string]any)["stations"], 2)
	_, faults = read(t, map[string]string{
		"components.csv": "id,kind\nhull,measured\n",
		"stations.csv":   "component,x [m],width [m],height [m]\nhul,0,0.4,0.4\n",
	})
	assert.Contains(t, faults, "stations, row 2, column A (component): unknown_reference")
}

func TestRestTakesWhatNoColumnHolds(t *testing.T) {
	job, faults := read(t, map[string]string{"components.csv": "id,kind,area [m²],rest\na,measured,3,\"{\"\"shape\"\": {\"\"edge_m\"\": 4}}\"\n"})
	require.Empty(t, faults)
	assert.Equal(t, 4.0, part(job)["shape"].(map[string]any)["edge_m"])
	_, faults = read(t, map[string]string{"components.csv": "id,kind,area [m²],rest\na,measured,3,\"{\"\"shape\"\": {\"\"area_m2\"\": 4}}\"\nb,measured,3,\"{\"\"colour\"\": 4}\"\n"})
	assert.Equal(t, []string{"components, row 2, column D (rest): duplicate_name", "components, row 3, column D (rest): unknown_field"}, faults)
}
