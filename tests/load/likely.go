package main

import "encoding/json"

// likely is a document whose numbers with a range are their likely values.
func likely(document []byte) ([]byte, error) {
	var tree any
	if err := json.Unmarshal(document, &tree); err != nil {
		return nil, err
	}
	return json.Marshal(single(tree))
}

func single(value any) any {
	switch v := value.(type) {
	case map[string]any:
		if one, ranged := v["likely"]; ranged {
			return one
		}
		for name, member := range v {
			v[name] = single(member)
		}
	case []any:
		for k, member := range v {
			v[k] = single(member)
		}
	}
	return value
}
