package api

import (
	"errors"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/estimate/fault"
	"filmbuild/estimate/wire"
	"filmbuild/surfaces/mesh"
)

// Mesh is a mesh that was sent, measured.
type Mesh struct {
	Mesh string `json:"mesh"` // its id, for the shape mesh of a job
	mesh.Result
}

// meshInput is how a mesh is to be measured.
type meshInput struct {
	mesh.Options
	Name string `json:"name"`
}

// meshes measures a mesh and keeps it for jobs.
//
//	@Summary		Measure a mesh
//	@Description	STL (text and binary), OBJ and PLY (text and binary) up to 64 MiB: area by face and by solid, bounding box, volume, and what is wrong in the file; nothing is repaired. Send the file as the body, with the parameters in the query, or as multipart/form-data with a part named file and the parameters as further parts. The file is kept in memory for a while, so that a job can name it by the id in the answer.
//	@Tags			meshes
//	@Accept			application/octet-stream,multipart/form-data
//	@Produce		json
//	@Param			unit				query		string	true	"unit the file is drawn in; files do not say"	Enums(m, mm, cm, in, ft)
//	@Param			split				query		string	false	"faces by direction"							Enums(none, up_down, left_right)
//	@Param			axis				query		string	false	"direction in the file that points up or left, as JSON: [0,0,1]"
//	@Param			angle_deg			query		number	false	"how far a normal may lie from the axis; 90 unless given"
//	@Param			solids				query		string	false	"names of solids that count, as a JSON list; all unless given"
//	@Param			samples				query		integer	false	"points at which material on both sides is looked for; 1000 unless given"
//	@Param			seed				query		integer	false	"of that sample; 1 unless given"
//	@Param			check_facets		query		integer	false	"checks that need memory are left out above this many facets; 200000 at most"
//	@Param			facets_per_turn		query		number	false	"facets round a full turn of a curved part, where known"
//	@Param			name				query		string	false	"file name, whose ending says the format; found from the content unless given"
//	@Success		200					{object}	Mesh
//	@Failure		400					{object}	Problem
//	@Failure		406					{object}	Problem
//	@Failure		413					{object}	Problem
//	@Failure		415					{object}	Problem
//	@Failure		422					{object}	Problem
//	@Failure		500					{object}	Problem
//	@Router			/v1/meshes [post]
func (s *Server) meshes(c *gin.Context) {
	if accepts(c, "", "application/json") == "" {
		return
	}
	data, values, err := meshBody(c)
	if err != nil {
		refuseError(c, err)
		return
	}
	in := meshInput{Options: mesh.DefaultOptions("")}
	var faults fault.List
	s.reader.Decode(wire.Query(values, &faults), &in, &faults)
	in.Options.Check(faults.At(""))
	if err := faults.Err(); err != nil {
		refuseError(c, err)
		return
	}
	file := upload{format: mesh.FormatOf(in.Name), data: data}
	result, err := file.measure(c.Request.Context(), in.Options)
	if err != nil {
		refuseError(c, meshFault(err))
		return
	}
	respond(c, Mesh{Mesh: s.uploads.keep(file), Result: result})
}

// meshFault turns what is wrong with a mesh into a fault of the input.
func meshFault(err error) error {
	var file *mesh.FileError
	var option *mesh.OptionError
	var list fault.List
	switch {
	case errors.As(err, &file):
		list.Add("/file", file.Code, file.Error())
	case errors.As(err, &option):
		list.Add(option.Pointer, option.Code, option.Detail)
	default:
		return err
	}
	return list.Err()
}

// meshBody reads the file and the parameters of a request. The errors are those
// of body.
func meshBody(c *gin.Context) ([]byte, url.Values, error) {
	values := c.Request.URL.Query()
	c.Request.Body = http.MaxBytesReader(c.Writer, c.Request.Body, mostMesh)
	kind, _, err := mime.ParseMediaType(c.GetHeader("Content-Type"))
	switch {
	case err == nil && kind == "multipart/form-data":
		return meshParts(c, values)
	case err == nil && (kind == "application/octet-stream" || strings.HasPrefix(kind, "model/")):
		data, err := io.ReadAll(c.Request.Body)
		return data, values, cutOff(err)
	}
	return nil, nil, &mediaTypeError{"send the mesh as application/octet-stream, as model/stl, model/obj or model/ply, or as a part named file of multipart/form-data"}
}

// meshParts reads a form: the part named file, and parameters.
func meshParts(c *gin.Context, values url.Values) ([]byte, url.Values, error) {
	reader, err := c.Request.MultipartReader()
	if err != nil {
		return nil, nil, &cutError{cause: err}
	}
	var data []byte
	for {
		part, err := reader.NextPart()
		if errors.Is(err, io.EOF) {
			return data, values, nil
		}
		if err != nil {
			return nil, nil, cutOff(err)
		}
		content, err := io.ReadAll(part)
		if err != nil {
			return nil, nil, cutOff(err)
		}
		if part.FormName() != "file" {
			values.Add(part.FormName(), string(content))
			continue
		}
		data = content
		if part.FileName() != "" && !values.Has("name") {
			values.Set("name", part.FileName())
		}
	}
}

// cutOff says of an error of reading that the body broke off, unless it was
// too large.
func cutOff(err error) error {
	var large *http.MaxBytesError
	if err == nil || errors.As(err, &large) {
		return err
	}
	return &cutError{cause: err}
}
