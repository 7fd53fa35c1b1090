package api

import (
	"bytes"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"sync"

	"filmbuild/surfaces/mesh"
)

const (
	mostMesh    = 64 << 20 // bytes of one upload
	mostUploads = 4 * mostMesh
	mostChecked = 200_000 // facets up to which a mesh is checked in memory, about 36 MB
)

// uploads keeps meshes in memory so that jobs can name them. Nothing is written
// anywhere: they go when the process ends, or when newer ones need the room.
type uploads struct {
	mu    sync.Mutex
	files map[string]upload
	order []string // ids, the oldest first
	bytes int
}

type upload struct {
	format string
	data   []byte
}

func newUploads() *uploads { return &uploads{files: map[string]upload{}} }

// keep stores a file and returns its id, which follows from its content.
func (u *uploads) keep(file upload) string {
	sum := sha256.Sum256(file.data)
	id := "mesh-" + hex.EncodeToString(sum[:10])
	u.mu.Lock()
	defer u.mu.Unlock()
	if _, known := u.files[id]; known {
		return id
	}
	u.files[id] = file
	u.order = append(u.order, id)
	for u.bytes += len(file.data); u.bytes > mostUploads; {
		oldest := u.order[0]
		u.bytes -= len(u.files[oldest].data)
		delete(u.files, oldest)
		u.order = u.order[1:]
	}
	return id
}

var errNoUpload = errors.New("there is no such mesh here; send it to /v1/meshes first, again where that was long ago")

// measure is how jobs find their meshes.
func (u *uploads) measure(id string, o mesh.Options) (mesh.Result, error) {
	u.mu.Lock()
	file, known := u.files[id]
	u.mu.Unlock()
	if !known {
		return mesh.Result{}, errNoUpload
	}
	return file.measure(context.Background(), o)
}

func (f upload) measure(ctx context.Context, o mesh.Options) (mesh.Result, error) {
	o.Format, o.Size, o.CheckFacets = f.format, int64(len(f.data)), min(o.CheckFacets, mostChecked)
	return mesh.Measure(ctx, bytes.NewReader(f.data), o)
}
