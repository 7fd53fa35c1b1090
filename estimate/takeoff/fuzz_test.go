package takeoff

import (
	"encoding/json"
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"filmbuild/estimate/fault"
)

// Whatever the text is, the answer is a JSON document or a list of faults.
func FuzzTables(f *testing.F) {
	reader, catalogue := engine(f)
	for _, t := range Templates() {
		data, err := WriteTemplate(t.Name)
		require.NoError(f, err)
		f.Add(data)
	}
	for _, said := range []string{"", "id;kind;area [m²]\na;measured;1,250\n", "sep=\t\nid\tkind\na\t\"b\n\"\n", "\xef\xbb\xbfid,rest\na,\"{\"\"b\"\": [1]}\"\n", "field,value\nlabour,[]\nname,x\n",
		"id,kind,packs,pack [L]\nx,paint,[],5\n", "id,shape,kind\na,{},box\n"} {
		f.Add([]byte(said))
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, name := range []string{"any.csv", "components.csv", "products.csv", "job.csv"} {
			job, err := Import([]File{{Name: name, Data: data}}, reader, catalogue)
			var faulty *fault.Error
			if err != nil {
				require.True(t, errors.As(err, &faulty) && len(faulty.Faults) > 0, "%v", err)
				continue
			}
			require.True(t, json.Valid(job), string(job))
		}
	})
}
