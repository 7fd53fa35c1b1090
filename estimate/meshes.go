package estimate

import (
	"filmbuild/surfaces"
	"filmbuild/surfaces/mesh"
)

// Meshes finds the mesh that a job names and measures it. It is how files and
// uploads reach the engine, which knows neither. The error tells people what is
// wrong with the file, or that there is none.
type Meshes func(name string, o mesh.Options) (mesh.Result, error)

// resolve measures the mesh of a shape that is one, unless it says its options
// wrong: then its Check tells.
func (r *Reader) resolve(shape surfaces.Shape, report func(pointer, code, detail string)) {
	m, ok := shape.(*surfaces.Mesh)
	if !ok || r.meshes == nil || m.Mesh == "" {
		return
	}
	sound := true
	m.Options().Check(func(_, _, _ string) { sound = false })
	if !sound {
		return
	}
	result, err := r.meshes(m.Mesh, m.Options())
	if err != nil {
		report("/mesh", "mesh", m.Mesh+": "+err.Error())
		return
	}
	m.Resolve(result)
}
