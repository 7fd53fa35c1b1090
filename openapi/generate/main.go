// Command generate writes the description of the API from the source. Run it in
// the module's root or below openapi:
//
//	go generate ./openapi
package main

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"

	"filmbuild/openapi/build"
)

func main() {
	root := flag.String("root", "..", "the directory of the module")
	flag.Parse()
	if err := write(*root); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func write(root string) error {
	document, err := build.Document(root)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(root, "openapi", "openapi.json"), document, 0o644)
}
