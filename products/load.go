package products

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
)

//go:embed data/*.csv
var embedded embed.FS

// Load reads the catalogue that is built into the program.
func Load() (*Catalogue, error) {
	data, err := fs.Sub(embedded, "data")
	if err != nil {
		return nil, err
	}
	return LoadFS(data)
}

// LoadFS reads a catalogue from the data files in the root of files. The error
// is Faults, with everything that is wrong.
func LoadFS(files fs.FS) (*Catalogue, error) {
	l := &loader{files: files, data: map[string][]byte{}, lines: map[string]row{}, packLines: map[string][]row{},
		c: &Catalogue{byID: map[string]Product{}, values: map[string][]Value{}, limits: map[string][]Limit{}}}
	l.read()
	l.marks()
	l.sources()
	l.products()
	l.packs()
	l.mediaValues()
	l.mediaLimits()
	l.weatherLimits()
	l.methods()
	l.partSizes()
	l.recoats()
	l.operations()
	l.check()
	if err := l.faults.orNil(); err != nil {
		return nil, err
	}
	return l.c, nil
}

// loader builds a catalogue and gathers the faults of its files.
type loader struct {
	files     fs.FS
	data      map[string][]byte // by file
	faults    Faults
	c         *Catalogue
	lines     map[string]row   // product id -> where it stands
	packLines map[string][]row // product id -> where its packs stand
}

// tables are the data files with their columns; no other file may stand beside
// them.
func tables() map[string]string {
	return map[string]string{
		"marks.csv":          "mark,meaning",
		"sources.csv":        "source,title,since,note",
		"paints.csv":         "id,name,family,role,colour,volume_solids_percent,dry_film_density_kg_l,density_kg_l,voc_g_l,water_volume_percent,exempt_volume_percent,mix/base,mix/hardener,mix/activator,thinner,thinner_percent,pot_life_h,pot_life_at_c,pot_life_2_h,pot_life_2_at_c,induction_h,dry_film_um," + described,
		"thinners.csv":       "id,name,voc_g_l,density_kg_l,water_volume_percent,exempt_volume_percent," + described,
		"liquids.csv":        "id,name,use,coverage_l_m2,density_kg_l," + described,
		"media.csv":          "id,name,dust_as," + described,
		"tapes.csv":          "id,name,use,width_mm,removal_h,removal_at_c,removal_source," + described,
		"films.csv":          "id,name,use,width_mm," + described,
		"discs.csv":          "id,name,grit,abrasive,area_m2," + described,
		"items.csv":          "id,name," + described,
		"packs.csv":          "product,size,unit,price,source,page,ref,mark,note",
		"part_packs.csv":     "product,part,size,unit,price,source,page,ref,mark,note",
		"media_values.csv":   "product,quantity,substrate,low,likely,high," + sourced,
		"media_limits.csv":   "product,quantity,substrate,low,high,action," + sourced,
		"weather_limits.csv": "of,quantity,low,high," + sourced,
		"methods.csv":        "id,name,note",
		"method_values.csv":  "method,quantity,substrate,low,likely,high," + sourced,
		"part_sizes.csv":     "id,name,note",
		"part_values.csv":    "method,part_size,quantity,low,likely,high," + sourced,
		"recoat.csv":         "of,from_c,to_c,min_h,max_h,wipe_until_h,missed,source,page,ref,mark,since,note",
		"operations.csv":     "id,name,basis,quantity,low,likely,high," + sourced,
	}
}

const (
	described = "hazards,supplier,source,page,ref,mark,note"
	sourced   = "unit,source,page,ref,mark,since,note"
)

// read takes in every file and makes the version of their content.
func (l *loader) read() {
	known := tables()
	entries, err := fs.ReadDir(l.files, ".")
	if err != nil {
		l.fault(".", err.Error())
		return
	}
	for _, entry := range entries {
		if _, ok := known[entry.Name()]; !ok {
			l.fault(entry.Name(), "is no data file of the catalogue")
		}
	}
	hash := sha256.New()
	for _, file := range slices.Sorted(maps.Keys(known)) {
		data, err := fs.ReadFile(l.files, file)
		if err != nil {
			l.fault(file, "is missing")
			continue
		}
		l.data[file] = data
		fmt.Fprintf(hash, "%s %d\n", file, len(data))
		hash.Write(data)
	}
	l.c.version = hex.EncodeToString(hash.Sum(nil))[:12]
}

func (l *loader) fault(file, detail string) {
	l.faults = append(l.faults, Fault{File: file, Detail: detail})
}

// rows returns the records of a file; none when it is missing or unusable,
// which is noted.
func (l *loader) rows(file string) []row {
	data, ok := l.data[file]
	if !ok {
		return nil
	}
	return readTable(file, data, strings.Split(tables()[file], ","), &l.faults)
}

// idForm is what an id in the data files looks like: lower-case words joined
// by dashes or underscores.
var idForm = regexp.MustCompile(`^[a-z0-9]+([_-][a-z0-9]+)*$`)

// id returns the id in a column, and notes one that is malformed.
func id(r row, column string) string {
	text := r.required(column)
	if text != "" && (len(text) > 80 || !idForm.MatchString(text)) {
		r.fault(column, "%q is no id; write lower-case words joined by dashes", clip(text))
	}
	return text
}

// once notes a key that was seen before; kind names what repeats.
func once(seen map[string]row, key string, r row, column, kind string) bool {
	if before, twice := seen[key]; twice {
		r.fault(column, "%s %q stands in %s:%d already", kind, clip(key), before.file, before.line)
		return false
	}
	seen[key] = r
	return true
}
