// Package web holds the page and the reader of the API description: plain
// files, no build step, nothing from another host.
package web

import (
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"io/fs"
	"mime"
	"path"
	"regexp"
	"slices"
)

//go:embed files
var files embed.FS

// File is a file of the page.
type File struct {
	Kind   string // media type
	Data   []byte
	Packed []byte // the same, compressed by gzip
	Tag    string // entity tag of the content
}

// NewFile returns a file of a media type with its compressed form and its tag.
func NewFile(kind string, data []byte) File {
	var packed bytes.Buffer
	w := gzip.NewWriter(&packed)
	_, _ = w.Write(data) // a buffer takes everything
	_ = w.Close()
	sum := sha256.Sum256(data)
	return File{Kind: kind, Data: data, Packed: packed.Bytes(), Tag: `"` + hex.EncodeToString(sum[:8]) + `"`}
}

// Files maps paths to the files served there.
func Files() map[string]File {
	served := map[string]File{}
	_ = fs.WalkDir(files, "files", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		data, err := files.ReadFile(name)
		if err != nil {
			return err
		}
		served[place(name)] = NewFile(kind(name), data)
		return nil
	}) // an embedded tree cannot fail to be read
	page := served["/"]
	served["/"] = NewFile(page.Kind, bytes.Replace(page.Data, []byte(preloads), links(served, "/web/page.js"), 1))
	return served
}

// preloads is where the page names its modules.
const preloads = "<!-- modules -->\n"

var imported = regexp.MustCompile(`from "\./([^"]+)"`)

// links tells the browser of every module that a module needs, however deep, so
// that it asks for all of them at once and not as it finds them.
func links(served map[string]File, module string) []byte {
	needed := []string{module}
	for i := 0; i < len(needed); i++ {
		for _, found := range imported.FindAllSubmatch(served[needed[i]].Data, -1) {
			if other := "/web/" + string(found[1]); !slices.Contains(needed, other) {
				needed = append(needed, other)
			}
		}
	}
	var tags bytes.Buffer
	for _, other := range needed[1:] {
		fmt.Fprintf(&tags, "<link rel=\"modulepreload\" href=\"%s\">\n", other)
	}
	return tags.Bytes()
}

// place is the path that a file is served at.
func place(name string) string {
	switch base := path.Base(name); base {
	case "index.html":
		return "/"
	case "docs.html":
		return "/docs"
	case "formula.html":
		return "/docs/formula"
	default:
		return "/web/" + base
	}
}

func kind(name string) string {
	switch path.Ext(name) {
	case ".js":
		return "text/javascript; charset=utf-8"
	case ".css":
		return "text/css; charset=utf-8"
	case ".html":
		return "text/html; charset=utf-8"
	case ".svg":
		return "image/svg+xml"
	}
	return mime.TypeByExtension(path.Ext(name))
}
