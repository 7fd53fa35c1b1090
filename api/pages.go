package api

import (
	"net/http"
	"strings"

	"github.com/gin-gonic/gin"

	"filmbuild/api/web"
)

// pages serves the page, its files and the reader of the API description.
func (s *Server) pages(r *gin.Engine) {
	for path, file := range web.Files() {
		if path == formulaPath {
			get(r, path, s.formulaPage(file))
			continue
		}
		get(r, path, func(c *gin.Context) { static(c, file) })
	}
}

// describe gives this description.
//
//	@Summary		The description of this API
//	@Description	OpenAPI 3.1. /docs reads it out for people.
//	@Tags			operations
//	@Produce		json
//	@Param			If-None-Match	header		string	false	"the ETag of the description that the caller has"
//	@Success		200				{object}	object
//	@Success		304				"the caller has it already"
//	@Router			/openapi.json [get]
func (s *Server) describe(c *gin.Context) { static(c, s.description) }

// static answers a file that is part of the program, or 304 to a caller that
// has it.
func static(c *gin.Context, file web.File) {
	c.Header("ETag", file.Tag)
	c.Header("Cache-Control", "no-cache")
	c.Header("Vary", "Accept-Encoding")
	if matches(c.Request.Header.Values("If-None-Match"), file.Tag) {
		c.Status(http.StatusNotModified)
		c.Writer.WriteHeaderNow()
		return
	}
	data := file.Data
	if packs(c.GetHeader("Accept-Encoding")) {
		c.Header("Content-Encoding", "gzip")
		data = file.Packed
	}
	send(c, http.StatusOK, file.Kind, data)
}

// packs reports whether a caller takes gzip: it names it, or everything, with a
// weight above 0 (RFC 9110 section 12.5.3).
func packs(accepted string) bool {
	takes, named := false, false
	for coding := range strings.SplitSeq(accepted, ",") {
		name, parameters, _ := strings.Cut(coding, ";")
		q, _ := quality(parameters)
		switch strings.ToLower(strings.TrimSpace(name)) {
		case "gzip", "x-gzip":
			takes, named = q > 0, true
		case "*":
			takes = takes || (!named && q > 0)
		}
	}
	return takes
}

// matches reports whether a tag is in the lists of If-None-Match, weakly
// compared (RFC 9110 section 13.1.2).
func matches(lists []string, tag string) bool {
	for _, list := range lists {
		for one := range strings.SplitSeq(list, ",") {
			if one = strings.TrimSpace(one); one == "*" || strings.TrimPrefix(one, "W/") == tag {
				return true
			}
		}
	}
	return false
}
