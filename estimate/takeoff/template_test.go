package takeoff

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestTheTemplatesImport(t *testing.T) {
	reader, catalogue := engine(t)
	for _, one := range Templates() {
		data, err := WriteTemplate(one.Name)
		require.NoError(t, err, one.Name)
		if one.Name == "steps.csv" { // steps need the parts and products that they name
			parts, err := WriteTemplate("components.csv")
			require.NoError(t, err)
			_, err = Import([]File{{Name: "components.csv", Data: parts}, {Name: one.Name, Data: data}}, reader, catalogue)
			assert.ErrorContains(t, err, "my-primer")
		}
		_, err = Import([]File{{Name: one.Name, Data: data}}, reader, catalogue)
		assert.NoError(t, err, one.Name)
	}
	_, err := WriteTemplate("nothing.csv")
	assert.EqualError(t, err, `there is no template "nothing.csv"`)
}

func TestTheWorkbookTemplateIsTheWholeExample(t *testing.T) {
	reader, catalogue := engine(t)
	data, err := WriteTemplate("job.xlsx")
	require.NoError(t, err)
	back, err := Import([]File{{Name: "job.xlsx", Data: data}}, reader, catalogue)
	require.NoError(t, err)
	assert.Equal(t, worked(t, templateJob), worked(t, back))
}

// Every column of a template whose field has a unit says it in its head.
func TestTheHeadsOfTemplatesHaveUnits(t *testing.T) {
	for name, wanted := range map[string][]string{
		"components.csv": {"span [m]", "skin [mm]", "existing_film [µm]", "area [m²]", "kind"},
		"steps.csv":      {"operation", "on", "dry_film [µm]"},
		"products.csv":   {"volume_solids [%]", "pack [L]", "pack [m]", "price", "pot_life_at [°C]"},
		"items.csv":      {"unit_price", "amount"},
	} {
		data, err := WriteTemplate(name)
		require.NoError(t, err)
		rows, err := csv.NewReader(bytes.NewReader(data)).ReadAll()
		require.NoError(t, err)
		require.Greater(t, len(rows), 1, "an example row")
		for _, head := range wanted {
			assert.Contains(t, rows[0], head, name)
		}
		assert.NotContains(t, strings.Join(rows[0], ","), "_m,", name)
	}
}
