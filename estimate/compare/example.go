package compare

import (
	"bytes"
	_ "embed"
	"encoding/json"

	"filmbuild/estimate/example"
)

//go:embed ways.json
var threeWays []byte

// Example is the built-in comparison: bead blasting against chemical stripping
// against work by hand, for one invented aircraft, the default example job.
func Example() ([]byte, error) {
	base, err := example.Find(example.Default)
	if err != nil {
		return nil, err
	}
	var document map[string]json.RawMessage
	if err := json.Unmarshal(threeWays, &document); err != nil {
		return nil, err
	}
	document["base"] = base.Job
	var out bytes.Buffer
	encoder := json.NewEncoder(&out)
	encoder.SetIndent("", "  ")
	err = encoder.Encode(document)
	return out.Bytes(), err
}
