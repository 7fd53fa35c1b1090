package products

import (
	"io/fs"
	"maps"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// copyOfData is the embedded data in memory, to be broken.
func copyOfData(t testing.TB) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	entries, err := fs.ReadDir(embedded, "data")
	require.NoError(t, err)
	for _, entry := range entries {
		data, err := fs.ReadFile(embedded, "data/"+entry.Name())
		require.NoError(t, err)
		files[entry.Name()] = &fstest.MapFile{Data: data}
	}
	return files
}

func replaced(t testing.TB, files fstest.MapFS, file, old, new string) {
	t.Helper()
	text := string(files[file].Data)
	require.Contains(t, text, old, "the test is out of date")
	files[file] = &fstest.MapFile{Data: []byte(strings.Replace(text, old, new, 1))}
}

// Each change of the data is refused with its file, line and column.
func TestLoadRefuses(t *testing.T) {
	for _, c := range []struct{ name, file, old, new, fault string }{
		{"unknown column", "thinners.csv", "id,name,", "id,name,smell,", `thinners.csv:1: unknown column "smell"`},
		{"missing column", "marks.csv", "mark,meaning", "mark", `marks.csv:1: missing column "meaning"`},
		{"column twice", "marks.csv", "mark,meaning", "mark,meaning,mark", `marks.csv:1: column "mark" stands twice`},
		{"short line", "items.csv", "tack-cloth,Tack cloth,,,invented,,,invented,", "tack-cloth,Tack cloth", "items.csv:2: has 2 cells; the header names 9 columns"},
		{"stray quote", "marks.csv", "B,read", `B,re"ad`, `marks.csv:3: bare " in non-quoted-field`},
		{"not UTF-8", "marks.csv", "B,read", "B,\xff", "marks.csv: is not UTF-8"},
		{"empty file", "marks.csv", "", "", ""},
		{"space at an end", "thinners.csv", "Thinner for epoxy", "Thinner for epoxy ", "thinners.csv:2: name: has a space at an end"},
		{"two spaces", "thinners.csv", "Thinner for epoxy", "Thinner  for epoxy", "thinners.csv:2: name: has two spaces in a row"},
		{"no-break space", "thinners.csv", "Thinner for epoxy", "Thinner\u00a0for epoxy", "thinners.csv:2: name: has the invisible character U+00A0"},
		{"zero-width space", "thinners.csv", "Thinner for epoxy", "Thinner\u200bfor epoxy", "thinners.csv:2: name: has the invisible character U+200B"},
		{"duplicate id", "thinners.csv", "thinner-etch,", "thinner-epoxy,", `thinners.csv:4: id: product "thinner-epoxy" stands in thinners.csv:2 already`},
		{"duplicate id in another file", "items.csv", "tack-cloth,", "stripper,", `items.csv:2: id: product "stripper" stands in liquids.csv:2 already`},
		{"malformed id", "items.csv", "tack-cloth,", "Tack/Cloth,", `items.csv:2: id: "Tack/Cloth" is no id`},
		{"missing source", "thinners.csv", "solvent,,invented,", "solvent,,,", "thinners.csv:2: source: is empty; it must be given"},
		{"source not listed", "thinners.csv", "solvent,,invented,", "solvent,,hearsay,", `thinners.csv:2: source: "hearsay" is not listed in sources.csv`},
		{"mark not listed", "thinners.csv", "invented,,,invented,", "invented,,,Z,", `thinners.csv:2: mark: "Z" is not listed in marks.csv`},
		{"out of range", "paints.csv", "grey,60,", "grey,160,", "paints.csv:2: volume_solids_percent: volume_solids_percent is 160 %; it must be above 0 % and at most 100 %"},
		{"missing number", "liquids.csv", "stripper,1.19,", "stripper,,", "liquids.csv:2: coverage_l_m2: coverage_l_m2 is missing or 0"},
		{"hexadecimal", "liquids.csv", "stripper,1.19,", "stripper,0x1p2,", `liquids.csv:2: coverage_l_m2: "0x1p2" is no plain number`},
		{"not a number", "media_values.csv", "211,254,297", "211,NaN,297", `media_values.csv:2: likely: "NaN" is no plain number`},
		{"half a mix", "paints.csv", ",4,1,,thinner-epoxy", ",4,,,thinner-epoxy", "paints.csv:2: mix/hardener: hardener is missing or 0"},
		{"unknown hazard", "items.csv", "Tack cloth,,", "Tack cloth,magic,", `items.csv:2: hazards/0: hazard "magic" is not in the list`},
		{"unknown role", "paints.csv", "epoxy-primer,primer,grey", "epoxy-primer,undercoat,grey", `paints.csv:2: role: role is "undercoat"; it must be one of primer`},
		{"unknown thinner", "paints.csv", "thinner-epoxy", "thinner-lost", `paints.csv:2: thinner: there is no thinner "thinner-lost"`},
		{"thinner that is none", "paints.csv", "thinner-epoxy", "stripper", `paints.csv:2: thinner: there is no thinner "stripper"`},
		{"falling spread", "media_values.csv", "211,254,297", "211,304,297", "media_values.csv:2: high: high is 297, less than likely at 304"},
		{"wrong unit", "media_values.csv", "297,µm", "297,mm", `media_values.csv:2: unit: is "mm"; size_um is in "µm"`},
		{"unknown quantity", "media_limits.csv", "fine,pressure_kpa", "fine,pressure_psi", `media_limits.csv:2: quantity: is "pressure_psi"; it must be one of`},
		{"substrate that does not matter", "media_values.csv", "size_um,,", "size_um,steel,", `media_values.csv:2: substrate: is "steel"; only breakdown_percent`},
		{"limit without bounds", "media_limits.csv", "206.84,275.80,warn", ",,warn", "media_limits.csv:2: low: is empty, and high too"},
		{"forbidden within bounds", "media_limits.csv", ",forbidden,clear_plastic,,", ",forbidden,clear_plastic,1,", "low: is given, or high is"},
		{"forbidden on nothing", "media_limits.csv", ",forbidden,clear_plastic,", ",forbidden,,", "substrate: is empty; say on what"},
		{"limit that does nothing", "media_limits.csv", "206.84,275.80,warn", "206.84,275.80,frown", `media_limits.csv:2: action: is "frown"; it must be one of warn, refuse`},
		{"rate of no basis", "operations.csv", "wash,Wash and rinse,nozzle_on", "wash,Wash and rinse,always", `operations.csv:2: basis: is "always"`},
		{"dust of nothing", "media.csv", "angular\",grit", "angular\",grits", "dust_as: dust_as is \"grits\""},
		{"disc of nothing", "discs.csv", "80,aluminium_oxide", "80,glue", "abrasive: abrasive is \"glue\""},
		{"limit of no abrasive", "media_limits.csv", "glass-bead-fine,", "sand,", `media_limits.csv:2: product: there is no product "sand"`},
		{"missing value", "media_values.csv", "bulk_density_kg_m3,,1362,1402,1442", "bulk_density_kg_m3,,1362,,1442", "media_values.csv:5: likely: is empty; it must be given"},
		{"pack of no product", "packs.csv", "epoxy-primer,0.946", "epoxy,0.946", `packs.csv:2: product: there is no product "epoxy"`},
		{"pack in a wrong unit", "packs.csv", "epoxy-primer,0.946,L", "epoxy-primer,0.946,kg", `packs.csv:2: unit: is "kg"; epoxy-primer is bought in L`},
		{"pack of nothing", "packs.csv", "epoxy-primer,0.946,L", "epoxy-primer,0,L", "packs.csv:2: size: pack_l is missing or 0"},
		{"pack twice", "packs.csv", "epoxy-primer,0.946,L", "epoxy-primer,3.785,L", `packs.csv:3: size: pack "epoxy-primer 3.785" stands in packs.csv:2 already`},
		{"price without cents", "packs.csv", "64.00", "64", `packs.csv:2: price: "64" is no amount with two decimal places`},
		{"price with an exponent", "packs.csv", "64.00", "1e2.00", `packs.csv:2: price: "1e2.00" is no amount`},
		{"negative price", "packs.csv", "64.00", "-64.00", "packs.csv:2: price: price is negative"},
		{"method without a rate", "method_values.csv", "brush,rate_m2_h", "roller,rate_m2_h", `methods.csv:2: id: "brush" has no usable rate_m2_h`},
		{"value of no method", "method_values.csv", "brush,rate_m2_h", "broom,rate_m2_h", `method_values.csv:9: method: there is no method "broom"`},
		{"efficiency above 100", "method_values.csv", "95,98", "95,198", "method_values.csv:2: high: is 198 %; it must be above 0 % and at most 100 %"},
	} {
		t.Run(c.name, func(t *testing.T) {
			files := copyOfData(t)
			if c.fault == "" {
				files[c.file] = &fstest.MapFile{}
				c.fault = c.file + ":1: has no header"
			} else {
				replaced(t, files, c.file, c.old, c.new)
			}
			_, err := LoadFS(files)
			var faults Faults
			require.ErrorAs(t, err, &faults)
			assert.Contains(t, err.Error(), c.fault)
		})
	}
}

func TestLoadRefusesFiles(t *testing.T) {
	files := copyOfData(t)
	delete(files, "discs.csv")
	files["prices-old.csv"] = &fstest.MapFile{Data: []byte("id\n")}
	_, err := LoadFS(files)
	require.Error(t, err)
	assert.Contains(t, err.Error(), "discs.csv: is missing")
	assert.Contains(t, err.Error(), "prices-old.csv: is no data file of the catalogue")
}

// One slip gives one fault, and several slips give them all, in order.
func TestLoadReportsAll(t *testing.T) {
	files := copyOfData(t)
	replaced(t, files, "tapes.csv", "masking,18,", "masking,-18,")
	replaced(t, files, "paints.csv", "grey,60,", "grey,0,")
	replaced(t, files, "paints.csv", ",21,,,0.5,75,", ",99,,,0.5,75,")
	_, err := LoadFS(files)
	var faults Faults
	require.ErrorAs(t, err, &faults)
	require.Len(t, faults, 3)
	assert.Equal(t, []int{2, 5, 2}, []int{faults[0].Line, faults[1].Line, faults[2].Line})
	assert.Equal(t, "pot_life_at_c", faults[1].Column)
	assert.Equal(t, "tapes.csv: width_mm", faults[2].File+": "+faults[2].Column)
}

func TestVersion(t *testing.T) {
	first, err := Load()
	require.NoError(t, err)
	again, err := LoadFS(copyOfData(t))
	require.NoError(t, err)
	assert.Equal(t, first.Version(), again.Version())
	assert.Len(t, first.Version(), 12)

	files := copyOfData(t)
	replaced(t, files, "packs.csv", "64.00", "64.01")
	changed, err := LoadFS(files)
	require.NoError(t, err)
	assert.NotEqual(t, first.Version(), changed.Version())
}

// Whatever stands in a file, loading either refuses it with faults or gives a
// catalogue whose products are without fault.
func FuzzLoadFS(f *testing.F) {
	files := copyOfData(f)
	names := slices.Sorted(maps.Keys(tables()))
	for i, name := range names {
		f.Add(uint8(i), files[name].Data)
		f.Add(uint8(i), []byte("id,name\n\"a"))
		f.Add(uint8(i), []byte(strings.Replace(string(files[name].Data), "1", "1e999", 1)))
	}
	f.Fuzz(func(t *testing.T, file uint8, data []byte) {
		files := copyOfData(t)
		files[names[int(file)%len(names)]] = &fstest.MapFile{Data: data}
		c, err := LoadFS(files)
		if err != nil {
			var faults Faults
			require.ErrorAs(t, err, &faults)
			require.NotEmpty(t, faults)
			return
		}
		for _, p := range c.Products() {
			p.Check(func(pointer, _, detail string) { t.Errorf("%s%s: %s", p.Base().ID, pointer, detail) })
			require.NotEmpty(t, p.Base().Source)
		}
	})
}

func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, err := Load(); err != nil {
			b.Fatal(err)
		}
	}
}
