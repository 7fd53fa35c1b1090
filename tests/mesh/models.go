// Package meshmodels finds the models that the mesh tests are held against.
// They are installed by install.sh beside it and are not part of the
// repository.
package meshmodels

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// Dir is the folder that install.sh fills.
func Dir() (string, error) {
	if dir := os.Getenv("FILMBUILD_MESH_DATA"); dir != "" {
		return dir, nil
	}
	cache, err := os.UserCacheDir()
	if err != nil {
		return "", err
	}
	return filepath.Join(cache, "filmbuild", "mesh-models"), nil
}

// Path returns the place of a model: one of the npm package stl-models under
// stl-models/, one of Debian's assimp-testmodels under assimp/. The error says
// what to run when it is not installed.
func Path(name string) (string, error) {
	dir, err := Dir()
	if err != nil {
		return "", err
	}
	path := filepath.Join(dir, filepath.FromSlash(name))
	if rest, found := strings.CutPrefix(name, "stl-models/"); found {
		path = filepath.Join(dir, "node_modules", "stl-models", filepath.FromSlash(rest))
	}
	if _, err := os.Stat(path); err != nil {
		return "", fmt.Errorf("the model %s is not installed; run bash tests/mesh/install.sh (%w)", name, err)
	}
	return path, nil
}
