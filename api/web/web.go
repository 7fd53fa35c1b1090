// Package web holds the page and the reader of the API description: plain
// files, no build step, nothing from another host.
package web

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"io/fs"
	"mime"
	"path"
)

//go:embed files
var files embed.FS

// File is a file of the page.
type File struct {
	Kind string // media type
	Data []byte
	Tag  string // entity tag of the content
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
		served[place(name)] = File{Kind: kind(name), Data: data, Tag: Tag(data)}
		return nil
	}) // an embedded tree cannot fail to be read
	return served
}

// place is the path that a file is served at.
func place(name string) string {
	switch base := path.Base(name); base {
	case "index.html":
		return "/"
	case "docs.html":
		return "/docs"
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

// Tag returns the entity tag of a content.
func Tag(data []byte) string {
	sum := sha256.Sum256(data)
	return `"` + hex.EncodeToString(sum[:8]) + `"`
}
